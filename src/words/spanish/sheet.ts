import type { Said } from '../language';
import { SCREEN } from '../screen';
import type { SHEET_PHRASES, SHEET_WORDS, STAFF_WORDS } from '../sheet';
import type { SHEET_OPTION_WORDS } from '../sheet-options';
import { printedNote } from '../spoken';
import { compas, lado, mayuscula } from './counting';
import { razon } from './reasons';

const compasesDe = (from: number, to: number): string => (to - from === 1 ? compas(from + 1) : `compases ${from + 1}–${to}`);

/** Pieces that the staff, the sheets and the files share, in Spanish. */
export const FRASES_DE_HOJA: Said<typeof SHEET_PHRASES> = {
  bars: compasesDe,
  direction: ({ direction, kind }) => `${direction} de ${kind}`,
  key: ({ tonic, mode }) => `${printedNote(tonic)} ${mode === 'minor' ? 'menor' : 'mayor'}`,
  tempo: (halfNotes) => `blanca = ${halfNotes}, negra = ${Math.round(halfNotes * 2)}`,
  asBefore: (section, range, same) => `${section}, ${compasesDe(...range)}: como ${compasesDe(...same)}`,
};

/** The staff view in Spanish. */
export const PENTAGRAMA: Said<typeof STAFF_WORDS> = {
  failed: 'No se pudieron cargar las fuentes de música, así que no hay pentagrama. Abre esta vista otra vez cuando haya conexión.',
  view: 'Pentagrama',
  sixteenths: 'En semicorcheas, un compás por ciclo',
  startAt: (bar, side) => `Empezar en el ${compas(bar + 1)}, ${lado(side)}`,
  barNote: (silence, hits, times) =>
    [hits ? ', cortes de la banda' : '', silence === 'stop' ? ', parada' : '', times !== null && times > 2 ? `, ${times} veces` : ''].join(
      '',
    ),
  daCapo: 'D.C.',
  system: (from, to, chords) => `${mayuscula(compasesDe(from, to))}: ${chords.join(', ')}`,
};

const nivel = (level: keyof typeof SCREEN.levels): string => `Nivel ${level}, ${SCREEN.levels[level]}`;

/** The lesson sheet in Spanish. */
export const HOJA: Said<typeof SHEET_WORDS> = {
  name: 'Hoja de lección',
  print: 'Imprimir o guardar en PDF',
  midi: 'Archivo MIDI',
  paper: 'Papel',
  papers: { A4: 'A4', Letter: 'Carta' },
  claveName: 'clave',
  begins: (side) => `empieza por el ${lado(side)}`,
  style: 'Estilo',
  key: 'Tono',
  level: nivel,
  now: 'Ahora',
  goal: 'Meta',
  firstPass: 'Una nota entre paréntesis se toca solo la primera vez.',
  ringsOn: 'Media ligadura suena hasta dentro de la pasada siguiente.',
  octaveClef: 'El bajo suena una octava más grave de lo escrito.',
  headings: {
    rhythm: ['El ritmo', 'Palméalo primero: el pie en los tiempos, las manos en la línea.'],
    right: ['La mano derecha sola', ''],
    left: ['La mano izquierda sola', ''],
    together: ['Las dos manos', ''],
    variation: ['Una variación', 'Otra figura para los mismos compases.'],
    blank: ['Escribe el montuno', 'Están la clave, el ritmo y los acordes. Cuidado con los golpes que toman el acorde siguiente.'],
    missing: ['Escribe las notas que faltan', 'Cada casilla es un golpe que toma el acorde que viene, una corchea antes.'],
    crossed: ['Busca los compases cruzados', 'En cada línea dos compases del ritmo han cambiado de sitio. Márcalos.'],
    answers: ['Respuestas', ''],
    'no task': ['No hay compases cruzados que buscar', 'Esta figura no dice qué lado es cuál. Elige otro nivel o una pieza en 4/4.'],
  },
  otherHeading: ({ direction, kind }) => [
    `La otra dirección: clave ${direction} de ${kind}`,
    'Los mismos acordes; los dos compases del ritmo cambian de sitio.',
  ],
  levelHeading: (level) => [nivel(level), ''],
  crossedAnswer: (line, bar) => `Línea ${line}: compases ${bar} y ${bar + 1}.`,
  ladder: 'Tempo, blancas por minuto',
  keys: 'Tonos',
  fingering: 'Octavas 1–5, o 1–4 si arriba hay tecla negra; terceras y cuartas 2–4; sextas 1–4.',
  teacher: 'Nota del maestro',
  caution:
    'El montuno pesa en la mano y el brazo. Muñeca suelta, descanso entre pasadas, y para si duele: entonces, a un maestro o a un profesional de la salud.',
  page: (page, pages) => `página ${page} de ${pages}`,
};

/** The choices beside a sheet in Spanish. */
export const OPCIONES_DE_HOJA: Said<typeof SHEET_OPTION_WORDS> = {
  kind: 'Clase de hoja',
  kinds: { lesson: 'Hoja de lección', worksheet: 'Hoja de tareas', levels: 'Tres niveles', list: 'Lista a lápiz' },
  kindHints: {
    lesson: 'Un ejercicio para llevar a casa.',
    worksheet: 'Una tarea con las respuestas en página aparte.',
    levels: 'La misma pieza escueta, básica y con notas de paso.',
    list: 'Una página para un atril lleno de partes de la banda.',
  },
  what: 'Qué lleva',
  extent: 'Cuánto',
  extents: { whole: 'Toda la forma', 'first section': 'La primera sección', loop: 'La vuelta' },
  noLoop: 'No hay vuelta puesta: se imprime toda la forma.',
  hands: 'Manos',
  hand: { together: 'Las dos', apart: 'Cada una sola, luego las dos', right: 'Solo derecha', left: 'Solo izquierda' },
  parts: {
    rhythm: 'Primero la línea del ritmo',
    count: 'La cuenta',
    bass: 'Bajo',
    variation: 'Una variación',
    other: 'La otra dirección',
    ladder: 'Escalera de tempo',
    keys: 'Doce tonos',
    teacher: 'Líneas para el maestro',
  },
  fingering: 'Digitación',
  fingerings: { none: 'Ninguna', changes: 'Donde cambia', 'every note': 'En cada nota' },
  habit: 'Escrito en',
  habits: { eighths: 'Corcheas, compás partido', sixteenths: 'Semicorcheas, un compás por ciclo' },
  task: 'Tarea',
  tasks: { blank: 'Pentagrama vacío', missing: 'Notas que faltan', crossed: 'Buscar los compases cruzados' },
  answers: 'Respuestas en página aparte',
  teacherText: 'Nota del maestro, impresa en la hoja',
  notKept: (reason) => `Esto no se guarda en el dispositivo: ${razon(reason)}.`,
};
