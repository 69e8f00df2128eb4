import type { Said } from '../language';
import type { SAFETY_WORDS } from '../safety';
import { razon } from './reasons';

const espacio = (bytes: number): string =>
  (bytes < 1_073_741_824 ? `${(bytes / 1_048_576).toFixed(1)} MB` : `${(bytes / 1_073_741_824).toFixed(1)} GB`).replace('.', ',');
const cifrados = (count: number): string => (count === 1 ? '1 cifrado' : `${count} cifrados`);
const repertorios = (count: number): string => (count === 1 ? '1 repertorio' : `${count} repertorios`);
const entradas = (count: number): string => (count === 1 ? '1 entrada del diario' : `${count} entradas del diario`);

const ESPERADO: Readonly<Record<Parameters<typeof SAFETY_WORDS.fault>[0]['code'], string>> = {
  'no json': 'se esperaba una copia de seguridad de esta página; esto no es texto JSON, o se corta antes del final',
  'no backup': 'se esperaba una copia de seguridad de esta página; este JSON es de otra clase',
  'newer version': 'se esperaba la versión 1; este archivo es de una versión posterior de la página: cárgala otra vez para tenerla',
  'no list': 'se esperaba una lista',
  'bad chart': 'se esperaba un cifrado con id, título, hora y texto',
  'bad set': 'se esperaba un repertorio con id, nombre, día y cifrados',
  'bad entry': 'se esperaba una entrada del diario con id, hora y texto',
  'bad record': 'se esperaba un registro de ajustes',
  'id twice': 'se esperaba cada id una sola vez',
};

/** Keeping the player's work safe, in Spanish. */
export const RESGUARDO: Said<typeof SAFETY_WORDS> = {
  name: 'A buen recaudo',
  where: 'Todo está solo en este dispositivo. Una copia de seguridad es un archivo con cifrados, repertorios, ajustes y diario.',
  lasting: (lasting) => {
    if (lasting === null) return 'Este navegador no dice cuánto tiempo guarda las cosas: haz una copia de vez en cuando.';
    return lasting
      ? 'Este navegador lo guarda hasta que lo borres.'
      : 'Este navegador puede borrarlo cuando falte espacio, o tras una semana sin visita.';
  },
  askToLast: 'Pedirle que lo guarde todo',
  room: (usage, quota) => `${espacio(usage)} en uso, sitio para ${espacio(quota)}.`,
  lastBackup: (day) => `Última copia hecha en este dispositivo: ${day}.`,
  noBackup: 'En este dispositivo todavía no se ha hecho ninguna copia.',
  saveBackup: 'Guardar una copia',
  fileName: (day) => `contratiempo-copia-${day}.json`,
  restoreHint: 'Para traer una de vuelta, usa «Traer archivos» o suéltala sobre esta página.',
  waiting: (name, day) => `${name}, hecha el ${day}. Todavía no ha cambiado nada. Traería:`,
  newCharts: (count) => `${cifrados(count)} que no ${count === 1 ? 'está' : 'están'} aquí`,
  sameCharts: (count) => `${cifrados(count)} que ya ${count === 1 ? 'está' : 'están'} aquí, palabra por palabra`,
  differentCharts: (count) => `${cifrados(count)} con un texto distinto del de aquí`,
  difference: (title, here, file) => `${title}: aquí cambiado ${here}, en el archivo ${file}`,
  newSets: repertorios,
  newEntries: entradas,
  nothingNew: 'nada que no esté ya aquí',
  onDifference: 'Donde los textos difieren',
  choices: { 'keep both': 'Guardar los dos', 'take the file': 'Tomar el del archivo', 'keep mine': 'Guardar el mío' },
  withSettings: (count) => `Tomar también sus preferencias y ajustes (${count})`,
  restore: 'Traerla',
  leave: 'Dejar todo como está',
  leftOut: (count) =>
    count === 1
      ? 'Una cosa del archivo no se puede leer y se deja fuera:'
      : `${count} cosas del archivo no se pueden leer y se dejan fuera:`,
  fault: ({ path, code, found }) => `${path === '' ? '' : `${path}: `}${ESPERADO[code]}${found === '' ? '' : `; se encontró ${found}`}.`,
  merged: 'La copia está dentro.',
  undoMerge: 'Dejar todo como estaba',
  refused: (reason) => `No se pudo: ${razon(reason)}. Nada de lo que escribiste se pierde; prueba otra vez, o guarda antes una copia.`,
  deleteAll: 'Borrar todo…',
  deleteWhat: (counts) =>
    `Esto borra de este dispositivo ${cifrados(counts.charts)}, ${repertorios(counts.sets)}, ${entradas(counts.entries)} y todos los ajustes. Sin una copia no hay vuelta atrás.`,
  deleteNow: 'Borrar todo ahora',
  keepAll: 'Guardarlo todo',
  report: 'Copiar un informe',
  reportHint: 'Para cuando algo va mal: datos del navegador y de la página, nada de lo que escribiste.',
  copied: 'El informe está copiado.',
  notCopied: 'El portapapeles no lo aceptó; aquí está el informe para copiarlo a mano.',
  offline: 'Sin conexión',
  offlineState: {
    off: 'Apagado: la página necesita conexión.',
    unsupported: 'Este navegador no puede guardar la página para usarla sin conexión.',
    preparing: 'Preparándose…',
    ready: 'Listo: página, sonidos y letras están en este dispositivo.',
    update: 'Listo, y hay una versión nueva.',
    failed: 'Esta vez no se pudo preparar; se intentará en la próxima visita.',
  },
  offlineOn: 'Hacer que funcione sin conexión',
  offlineOff: 'Apagarlo y borrar la copia',
};
