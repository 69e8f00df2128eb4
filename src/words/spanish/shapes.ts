import type { Degree } from '../../vocabulary';
import type { NamedMove, SHAPE_WORDS } from '../hand-shape';
import type { Said } from '../language';
import { printedChord, printedNote } from '../spoken';
import { juntas, PIEZAS } from './counting';

const PASOS = ['', 'medio tono', 'un tono', 'una tercera menor', 'una tercera', 'una cuarta'];

const paso = (semitones: number): string =>
  `${PASOS[Math.abs(semitones)] ?? `${Math.abs(semitones)} semitonos`} ${semitones > 0 ? 'arriba' : 'abajo'}`;

const queda = (count: number): string => (count === 1 ? 'se queda' : 'se quedan');

function forma(names: readonly string[], degree: Degree | null, chord: string): string {
  const letters = names.map(printedNote);
  const outer = letters.length > 1 && letters[0] === letters.at(-1);
  const inside = outer ? letters.slice(1, -1) : letters;
  const what = degree ? `, ${PIEZAS.degrees[degree]} de ${printedChord(chord)}` : '';
  if (!outer) return letters.length === 1 ? `${letters[0]}${what}` : juntas(letters);
  return `octava de ${letters[0]}${inside.length > 0 ? ` con ${juntas(inside)}` : ''}${what}`;
}

function movimiento(stays: readonly string[], moves: readonly NamedMove[]): string {
  const notes = stays.length + moves.length;
  const all = notes === 2 ? 'las dos ' : notes > 2 ? 'todas ' : '';
  const first = moves[0]?.semitones;
  if (notes > 0 && moves.length === 0) return `${all}${queda(notes)}`;
  if (first !== undefined && first !== null && stays.length === 0 && moves.every((move) => move.semitones === first))
    return `${all}${paso(first)}`;
  const held = stays.length === 0 ? [] : [`${juntas(stays.map(printedNote))} ${queda(stays.length)}`];
  return [...held, ...moves.map((move) => `${printedNote(move.name)} ${move.semitones === null ? 'es nueva' : paso(move.semitones)}`)].join(
    ', ',
  );
}

/** The hand strip in Spanish. */
export const MANO: Said<typeof SHAPE_WORDS> = {
  now: 'ahora',
  next: 'después',
  stays: 'queda',
  stay: 'quedan',
  left: 'izquierda',
  shape: forma,
  motion: movimiento,
};
