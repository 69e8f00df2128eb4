import type { Said } from '../language';
import { printedKey } from '../spoken';
import type { TAKE_ALONG_WORDS } from '../take-along';
import { FRASES_DE_HOJA } from './sheet';

const PISTAS = { full: 'toda la banda', 'without-piano': 'sin piano', 'piano-only': 'solo piano' } as const;

const CLASES = {
  sheet: 'Hoja (PDF)',
  midi: 'Archivo MIDI',
  musicxml: 'MusicXML',
  mxl: 'MusicXML comprimido',
  wav: 'Pista para tocar (WAV)',
  pack: 'El paquete (zip)',
} as const;

const coma = (value: number, digits: number): string => value.toFixed(digits).replace('.', ',');
const ocupa = (bytes: number): string => {
  if (bytes < 1e6) return `${Math.max(1, Math.round(bytes / 1e3))} kB`;
  return bytes < 1e9 ? `${coma(bytes / 1e6, bytes < 1e7 ? 1 : 0)} MB` : `${coma(bytes / 1e9, 1)} GB`;
};

/** The files to take along in Spanish. */
export const PARA_LLEVAR: Said<typeof TAKE_ALONG_WORDS> = {
  open: 'Para llevar',
  title: 'Para llevar',
  close: 'Cerrar',
  about: 'Archivos de toda la forma, tal como está puesta. Nada sale de este dispositivo.',
  kinds: CLASES,
  hints: {
    sheet: 'las mismas páginas que al imprimir',
    midi: 'para cualquier secuenciador o programa de partituras',
    musicxml: 'para programas de partituras',
    mxl: 'lo mismo, más pequeño',
    wav: 'para tocar con ella donde sea',
    pack: 'hoja, MIDI, MusicXML y pistas en muchos tonos, en un archivo',
  },
  save: 'Guardar',
  saveKind: (kind) => `Guardar: ${CLASES[kind]}`,
  feel: 'Fraseo',
  feels: { straight: 'Como está escrito', measured: 'Como toca una banda' },
  parts: 'Quién toca',
  playAlongs: PISTAS,
  form: 'Cómo va',
  forms: { loop: 'En vuelta, sin costura', once: 'Conteo, una vez, y se apaga sola' },
  tempo: 'Tempo',
  tempoOf: (which, halfNotes) => `${which === 'now' ? 'Ahora' : 'Meta'}, blanca = ${halfNotes}`,
  rate: 'Muestras por segundo',
  rateOf: (rate) => (rate === 44_100 ? '44,1 kHz' : '48 kHz'),
  keys: 'Tonos',
  key: printedKey,
  allKeys: 'Los doce',
  thisKey: 'Solo este tono',
  holds: 'Qué lleva',
  estimate: (files, bytes) => `${files} archivos, unos ${ocupa(bytes)}`,
  nothingChosen: 'Elige al menos un tono, un tempo y una clase de archivo.',
  working: (kind, share) => `Haciendo: ${CLASES[kind]}, ${Math.floor(share * 100)} %`,
  preparing: 'Leyendo las grabaciones…',
  cancel: 'Cancelar',
  done: (name, bytes) => `Guardado: ${name}, ${ocupa(bytes)}.`,
  cancelled: 'Cancelado. No se guardó nada.',
  diskRefused: (reason) =>
    `El archivo no se pudo escribir: ${reason}. No se guardó nada; haz sitio o elige otra carpeta y prueba otra vez.`,
  noSamples: (reason) =>
    `Las grabaciones no se pudieron cargar (${reason}), así que no hay pista que guardar. Prueba otra vez cuando haya conexión.`,
  notFetched: 'Esta parte de la página no se pudo traer. Ciérrala y ábrela otra vez cuando haya conexión.',
  noMusic: 'No hay música puesta que llevar.',
  failed: (reason) => `El archivo no se pudo hacer: ${reason}. No se guardó nada.`,
  again: 'Probar otra vez',
  contents: {
    title: (title) => `${title}: qué hay en este paquete`,
    about: ({ direction, kind }, tempi) => `Clave ${direction} de ${kind}. Tempo, blancas por minuto: ${tempi}.`,
    file: 'Archivo',
    what: 'Qué es',
    sheet: 'Hoja de lección',
    midi: (halfNotes) => `Archivo MIDI, blanca = ${halfNotes}`,
    musicxml: 'Para programas de partituras',
    wav: (kind, halfNotes) => `Pista para tocar, ${PISTAS[kind]}, blanca = ${halfNotes}`,
    loop: 'Las pistas terminan justo con el último compás: pon el reproductor a repetir y dan vueltas sin costura.',
    once: 'Las pistas empiezan con dos compases de clave y suenan una vez.',
    caution:
      'El montuno pesa en la mano y el brazo: descansa entre pasadas y para si duele; entonces, a un maestro o a un profesional de la salud. Audífonos a volumen moderado.',
    key: FRASES_DE_HOJA.key,
  },
};
