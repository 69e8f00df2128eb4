import type { IMPORT_WORDS, ImportFault, ImportFaultCode, NotTaken } from '../import-screen';
import type { Said } from '../language';
import { mayuscula } from './counting';

const cita = (text: string): string => {
  const signs = [...text.replace(/\p{Cc}/gu, ' ').trim()];
  return signs.length === 0 ? '' : ` «${signs.length > 40 ? `${signs.slice(0, 39).join('')}…` : signs.join('')}»`;
};

const FALTAS: Readonly<Record<ImportFaultCode, (found: string) => string>> = {
  'too large': (found) => `el archivo es demasiado grande${found}`,
  'not a score file': () => 'esto no es un archivo de partitura',
  'broken archive': (found) => `el archivo comprimido no se puede abrir${found}`,
  'no score in the archive': () => 'el archivo comprimido no lleva ninguna partitura',
  // What the parser says of these it says in English; line and column say as much.
  'cut off': () => 'el archivo termina antes de tiempo',
  'not well-formed': () => 'el archivo está dañado',
  'document type': (found) => `el archivo declara cosas propias${found}, y leerlas no es seguro`,
  'too deep': () => 'el archivo tiene demasiados niveles, uno dentro de otro',
  'another root': (found) => `esto es XML de otra clase${found}`,
  'no parts': () => 'la partitura no tiene ninguna parte',
  'no bars': () => 'la partitura no tiene ningún compás',
  'no chords': () => 'la partitura no lleva cifrado de acordes',
  meter: (found) => `un compás en${found}`,
  'not a chart': (found) => `la partitura no se puede escribir como cifrado${found}`,
  'took too long': () => 'leer el archivo tardaba demasiado y se dejó',
  stopped: (found) => `la lectura del archivo se detuvo${found}`,
};

/** Faults that are said without a place, though the file has lines. */
const SIN_LUGAR: ReadonlySet<ImportFaultCode> = new Set(['too large', 'not a score file', 'not a chart', 'took too long', 'stopped']);

function falta({ code, line, column, text, expected }: ImportFault): string {
  const where = line === null || SIN_LUGAR.has(code) ? '' : `Línea ${line}, columna ${column ?? 1}: `;
  const what = FALTAS[code](cita(text));
  return `${where}${where === '' ? mayuscula(what) : what}. Se esperaba: ${expected}.`;
}

type Dato = (name: string) => string;

const NO_TOMADO: Readonly<Record<NotTaken['code'], (dato: Dato) => string>> = {
  notes: (dato) =>
    `un cifrado lleva acordes: ${dato('count') === '1' ? 'una nota se dejó fuera' : `${dato('count')} notas se dejaron fuera`}`,
  'other parts': (dato) => `solo se leyó la parte ${dato('part')}; otras partes: ${dato('others')}`,
  'unknown kind': (dato) => `el acorde ${dato('chord')} es de una clase que aquí no se conoce (${dato('kind')}); sigue el acorde anterior`,
  'chord read as': (dato) => `el acorde ${dato('typed')} se tomó como ${dato('chord')}`,
  'chord moved': (dato) => `${dato('chord')} está entre dos tiempos; se llevó al tiempo libre más cercano`,
  'chord crowded out': (dato) => `no queda tiempo para ${dato('chord')}`,
  'alternate chord': (dato) => `el acorde alternativo ${dato('chord')} se dejó fuera`,
  'second chord': (dato) => `de dos acordes a la vez solo se tomó ${dato('chord')}`,
  'no root': () => 'un acorde escrito como grado del tono se dejó fuera',
  'key change': (dato) => `el tono cambia a ${dato('key')} dentro de una sección; los acordes están bien, el tono se queda`,
  mode: (dato) => `el modo ${dato('mode')} se tomó como ${dato('key')}`,
  tempo: (dato) => `el tempo de ${dato('quarters')} negras por minuto se sale de lo que aquí se estudia y se dejó fuera`,
  'tempo change': () => 'el tempo cambia dentro de una sección; queda el primero',
  'bar length': () => 'el compás no dura lo que dice su medida; se tomó como entero',
  'every bar short': () =>
    'todos los compases están en 2/4 y se tomaron como medio compás de 4/4: júntalos de dos en dos si la pieza se cuenta en cuatro',
  'mark inside a repeat': (dato) => `la marca ${dato('mark')} está dentro de una repetición y no empieza sección`,
  'same mark': (dato) => `la marca ${dato('mark')} ya está con otros compases; esta sección se llama ${dato('name')}`,
  jumps: () => 'los saltos (D.C., D.S., coda, fine) no llevan a ninguna parte y se dejaron fuera',
  repeats: () => 'las repeticiones no cuadran y se dejaron fuera: cada compás está una vez',
  'open repeat': () => 'la repetición que empieza aquí no tiene final; se dejó fuera',
  transposed: (dato) =>
    `la parte es de un instrumento transpositor; los acordes se movieron ${dato('semitones')} semitonos a tono de concierto`,
  'measure repeat': (dato) => `un signo que repite ${dato('bars')} compases se dejó fuera; sigue el acorde anterior`,
  'form order': () => 'las secciones que vuelven iguales se escribieron una vez, con su orden en la línea de la forma',
};

/** Reading a score file into a chart, in Spanish. */
export const IMPORTAR: Said<typeof IMPORT_WORDS> = {
  fault: falta,
  notTaken: ({ code, bar, detail }) => {
    const what = NO_TOMADO[code]((name) => String(detail[name] ?? ''));
    return `${bar === null ? mayuscula(what) : `Compás ${bar}: ${what}`}.`;
  },
  expected: {
    scoreFile: 'un archivo MusicXML: .musicxml, .xml o .mxl',
    size: (megabytes) => `un archivo de ${megabytes} MB como mucho, también descomprimido`,
    sizeFound: (megabytes) => `${megabytes} MB`,
    archive: 'un archivo MusicXML comprimido (.mxl) que esté entero',
    container: 'un archivo META-INF/container.xml que nombre la partitura, o uno solo acabado en .musicxml o .xml',
    rest: (element) => `el resto del archivo, hasta el final de <${element}>`,
    wellFormed: 'XML bien formado',
    plainType: 'un archivo MusicXML sin declaraciones de entidades',
    depth: (levels) => `${levels} niveles como mucho`,
    root: 'una partitura: <score-partwise> o <score-timewise>',
    part: 'al menos una <part>',
    bar: 'al menos un <measure>',
    chords: 'acordes cifrados sobre los compases (<harmony>)',
    meter: '4/4 o 2/2, con 2/4 para compases cortos, o 6/8 con 3/8',
    oneMeter: (meter) => `${meter} hasta el final, como empezó la partitura`,
    lessWork: 'una partitura que se lea en pocos segundos',
    again: 'el archivo otra vez, u otro',
  },
};
