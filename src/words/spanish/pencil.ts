import type { Said } from '../language';
import type { PENCIL_WORDS } from '../pencil-list';
import type { SCORE_FILE_WORDS } from '../score-file';
import { compases, lado } from './counting';

/** A count as it is pencilled in Spanish: `1`, `3y`. */
const cuenta = (step: number): string => (step % 2 === 0 ? String(step / 2 + 1) : `${(step + 1) / 2}y`);

/** The pencil list in Spanish. */
export const LISTA: Said<typeof PENCIL_WORDS> = {
  name: 'Lista a lápiz',
  order: 'Orden',
  inOrder: (section, times) => (times > 1 ? `${section} ×${times}` : section),
  side: lado,
  sides: (sides) => sides.map(lado).join(', luego '),
  bars: compases,
  onCue: 'a la señal',
  stop: 'parada',
  rest: 'silencio',
  hitsOn: (steps) => `cortes ${steps.map(cuenta).join(' ')}`,
  times: (times) => `×${times}`,
  ending: (passes) => `${passes.join('.')}.`,
  reentry: (step, side) => `entra en ${cuenta(step)}, ${lado(side)}`,
  legend: {
    octave: 'La nota sobre un acorde: la octava.',
    leaveOut: 'Un 1 tachado: el acorde ya lo tocaste, deja vacío el primer tiempo.',
    odd: 'Un círculo: un número impar de compases, así que lo que sigue empieza por el otro lado.',
  },
  setLines: 'Compases en cada línea, como en la parte',
  setLinesHint: 'Números enteros con espacios, como 4 4 8. O toca el hueco tras un compás.',
  badLines: (text) => `«${text}» no es un número de compases: números enteros de 1 a 32 con espacios entre ellos, como 4 4 8.`,
  fours: 'Cuatro compases por línea',
  breakHere: (bar) => `La línea termina tras el compás ${bar} de la lista`,
};

const PARTES: Readonly<Record<string, string>> = {
  piano: 'Piano',
  bass: 'Bajo',
  clave: 'Clave',
  cascara: 'Cáscara',
  'mambo bell': 'Campana de mambo',
  'cha-cha bell': 'Campana de cha-cha-chá',
  'bongo bell': 'Campana de bongó',
  bell: 'Campana',
  bongo: 'Bongó',
  conga: 'Congas',
  timbales: 'Timbales',
  maracas: 'Maracas',
  guiro: 'Güiro',
};

/** Words in a score that other programs open, in Spanish. */
export const PARTITURA: Said<typeof SCORE_FILE_WORDS> = {
  untitled: 'Montuno',
  part: (name) => PARTES[name] ?? name,
  side: lado,
  clave: ({ direction, kind }) => `clave ${direction} de ${kind}`,
  restart: (side) => `la clave empieza de nuevo por el ${lado(side)}`,
  onCue: 'hasta la señal',
  push: 'anticipado',
};
