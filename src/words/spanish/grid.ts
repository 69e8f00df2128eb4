import type { Device } from '../../vocabulary';
import type { CellFacts, GRID_WORDS } from '../grid';
import type { Said } from '../language';
import { printedChord } from '../spoken';
import { compas, juntas, lado, notaDicha, notasDichas } from './counting';

const INSTRUMENTOS: Readonly<Record<string, string>> = {
  cascara: 'cáscara',
  guiro: 'güiro',
  bell: 'campana de 6/8',
  bongo: 'bongó',
  pulse: 'pulso',
  'cha-cha bell': 'campana de cha-cha-chá',
  'mambo bell': 'campana de mambo',
  'bongo bell': 'campana de bongó',
  'low drum': 'timbal grave',
};

const GOLPES: Readonly<Record<string, string>> = {
  accent: 'acentuado',
  open: 'abierto',
  slap: 'tapado',
  muffled: 'sordo',
  heel: 'de palma',
  toe: 'de dedos',
  mouth: 'en la boca',
  neck: 'en el cuello',
  thumb: 'con el pulgar',
  fingers: 'con los dedos',
  low: 'grave',
  rimshot: 'al aro',
  roll: 'redoble',
  'open low': 'abierto grave',
  'soft open': 'abierto suave',
  'soft slap': 'tapado suave',
  'long scrape': 'raspada larga',
  'short scrape': 'raspada corta',
};

const MARCAS: Readonly<Record<Device, string>> = {
  'octave-up': 'una octava arriba',
  'octaves-only': 'solo octavas',
  'one-bar-neutral': 'compás neutro',
  'extra-note': 'nota añadida',
  'double-notes': 'notas dobles',
  'half-step-out': 'medio tono afuera',
};

const instrumento = (name: string): string => INSTRUMENTOS[name] ?? name;
const golpe = ({ instrument, stroke }: CellFacts['percussion'][number]): string =>
  stroke === 'plain' ? instrumento(instrument) : `${instrumento(instrument)} ${GOLPES[stroke] ?? stroke}`;
const mano = (hand: 'right' | 'left'): string => (hand === 'right' ? 'mano derecha' : 'mano izquierda');

function casilla(cell: CellFacts): string {
  const parts = [compas(cell.bar), lado(cell.side), cell.count === '&' ? `«y» del tiempo ${cell.beat}` : `tiempo ${cell.beat}`];
  if (cell.chord) parts.push(`${printedChord(cell.chord.symbol)}${cell.chord.early ? ' anticipado' : ''}`);
  if (cell.clave) parts.push('golpe de clave');
  if (cell.hit) parts.push('corte de la banda');
  const shared = cell.left.length > 0 && cell.left.join(' ') === cell.bass.join(' ');
  if (cell.right.length > 0) parts.push(`${mano('right')} ${notasDichas(cell.right)}`);
  if (cell.left.length > 0) parts.push(`${mano('left')} ${shared ? 'y bajo ' : ''}${notasDichas(cell.left)}`);
  if (cell.bass.length > 0 && !shared) parts.push(`bajo ${notasDichas(cell.bass)}`);
  for (const { hand, names } of cell.later ?? []) parts.push(`una semicorchea después ${mano(hand)} ${notasDichas(names)}`);
  for (const mark of cell.marks ?? []) parts.push(MARCAS[mark]);
  if (cell.percussion.length > 0) parts.push(juntas(cell.percussion.map(golpe)));
  return parts.join(', ');
}

/** The grid in Spanish. */
export const CUADRICULA: Said<typeof GRID_WORDS> = {
  sideName: lado,
  and: 'y',
  barName: compas,
  cell: casilla,
  instrumentName: instrumento,
  spokenNote: notaDicha,
  spokenNotes: notasDichas,
  keys: 'Las flechas van de paso en paso y de compás en compás; Re Pág y Av Pág, de tarjeta en tarjeta. Intro dice por qué suena un golpe; Mayúsculas e Intro empiezan en el compás.',
  firstTime: '1.ª vez',
  fromSide: (side) => `desde el ${lado(side)}`,
  byHand: 'cambiado a mano',
  noChord: 'N.C.',
  noChordMeans: 'siguen la clave y la percusión',
  stop: 'parada',
  stopMeans: 'todos callan',
  hit: 'cortes de la banda',
  pickup: 'anacrusa',
  gridName: (bars) => `Tarjeta que suena, ${bars}`,
  startAt: (bar, side) => `Empezar en el compás ${bar}, ${lado(side)}`,
  bars: (from, to) => (to - from === 1 ? compas(from + 1) : `compases ${from + 1} a ${to}`),
  loneBar: (section) => `${section} termina aquí, en mitad de la clave. Lo que sigue empieza por el otro lado.`,
  halfSide: 'Un compás de medio lado: desde aquí la clave queda cruzada sobre los compases.',
  restartShort: 'la clave empieza de nuevo',
  halfStepOut: 'medio tono afuera',
  vamp: { holding: 'hasta la señal', leaving: 'saliendo', 'one more round': 'una vuelta más' },
  vampSpoken: {
    holding: 'El vamp da vueltas hasta la señal.',
    leaving: 'Señal recibida: se sale en el próximo ciclo.',
    'one more round': 'Una vuelta más: la señal llegó cuando el bajo ya había seguido.',
  },
};
