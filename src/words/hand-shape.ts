import type { Degree } from '../vocabulary';
import { printedChord, printedNote, SPOKEN } from './spoken';

const { list } = SPOKEN;

const degreeWord = (degree: Degree): string => SPOKEN.degrees[degree];

/** The hand's shape: `C♯ octave, third of A7`, `G and B`. `degree` and `chord` belong to the octave note. */
function shapeWords(names: readonly string[], degree: Degree | null, chord: string): string {
  const letters = names.map(printedNote);
  const outer = letters.length > 1 && letters[0] === letters.at(-1);
  const inside = outer ? letters.slice(1, -1) : letters;
  if (!outer) return letters.length === 1 && degree ? `${letters[0]}, ${degreeWord(degree)} of ${printedChord(chord)}` : list(letters);
  const octave = `${letters[0]} octave${inside.length > 0 ? ` with ${list(inside)}` : ''}`;
  return degree ? `${octave}, ${degreeWord(degree)} of ${printedChord(chord)}` : octave;
}

/** A note that was not there before: its name and how far it came, in semitones; null for one that comes from nowhere near. */
export interface NamedMove {
  readonly name: string;
  readonly semitones: number | null;
}

/** How a shape lies to the one before it: `both stay`, `G stays, B♭ a half step down`, `both a whole step up`; empty for neither. An octave counts as one note. */
function motionWords(stays: readonly string[], moves: readonly NamedMove[]): string {
  const notes = stays.length + moves.length;
  const all = notes === 2 ? 'both ' : notes > 2 ? 'all ' : '';
  const first = moves[0]?.semitones;
  if (notes > 0 && moves.length === 0) return `${all}${notes === 1 ? 'stays' : 'stay'}`;
  if (first !== undefined && first !== null && stays.length === 0 && moves.every((move) => move.semitones === first))
    return `${all}${stepWords(first)}`;
  const held = stays.length === 0 ? [] : [`${list(stays.map(printedNote))} ${stays.length === 1 ? 'stays' : 'stay'}`];
  return [
    ...held,
    ...moves.map((move) => `${printedNote(move.name)} ${move.semitones === null ? 'is new' : stepWords(move.semitones)}`),
  ].join(', ');
}

const STEP_WORDS = ['', 'a half step', 'a whole step', 'a minor third', 'a third', 'a fourth'];

function stepWords(semitones: number): string {
  const size = Math.abs(semitones);
  return `${STEP_WORDS[size] ?? `${size} half steps`} ${semitones > 0 ? 'up' : 'down'}`;
}

/** What the hand strip says. */
export const SHAPE_WORDS = {
  now: 'now',
  next: 'next',
  stays: 'stays',
  /** Of more notes than one. */
  stay: 'stay',
  left: 'left',
  shape: shapeWords,
  motion: motionWords,
} as const;
