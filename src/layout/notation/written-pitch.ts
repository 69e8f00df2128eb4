import { assert } from '../../vocabulary';
import type { ClefName } from './notation';

/** A note name taken apart. */
export interface WrittenPitch {
  readonly midi: number;
  readonly letter: string;
  readonly alter: number;
  readonly octave: number;
}

const LETTERS = 'CDEFGAB';
/** Letters in the order in which sharps enter a key signature; flats enter from its end. */
const SHARP_ORDER = 'FCGDAEB';

/** Reads an ASCII scientific name such as `Eb4`, `F##5` or `Cb-1`. Throws for anything else, since names come from our own engine. */
export function writtenPitch(name: string, midi: number): WrittenPitch {
  const found = /^([A-G])(#{0,2}|b{0,2})(-?\d+)$/.exec(name);
  assert(found?.[1] !== undefined && found[2] !== undefined && found[3] !== undefined, `a note name must look like Eb4, got ${name}`);
  return { midi, letter: found[1], alter: found[2].startsWith('b') ? -found[2].length : found[2].length, octave: Number(found[3]) };
}

/** Steps of the seven-note scale above C0: middle C (C4) is 28. Places on a staff are counted in these. */
export const staffStep = (pitch: { readonly letter: string; readonly octave: number }): number =>
  pitch.octave * 7 + LETTERS.indexOf(pitch.letter);

/** What a key signature of `fifths` sharps (negative: flats) does to a letter: 1, 0 or −1. */
export function signatureAlter(letter: string, fifths: number): number {
  const place = SHARP_ORDER.indexOf(letter);
  if (fifths > 0) return place < fifths ? 1 : 0;
  return 6 - place < -fifths ? -1 : 0;
}

/** Staff steps, as they sound, of the lowest and highest line of each clef. */
export const CLEF_LINES: Readonly<Record<ClefName, { readonly bottom: number; readonly top: number }>> = {
  treble: { bottom: 30, top: 38 },
  bass: { bottom: 18, top: 26 },
  'bass-8vb': { bottom: 11, top: 19 },
};

/** Leger lines that a note needs in a clef. */
export function legerLines(step: number, clef: ClefName): number {
  const { bottom, top } = CLEF_LINES[clef];
  return Math.max(0, Math.floor((bottom - step) / 2), Math.floor((step - top) / 2));
}

/** The clef among `candidates` in which the notes need the fewest leger lines in all; the earlier one when equal. */
export function fittingClef(steps: readonly number[], candidates: readonly [ClefName, ...ClefName[]]): ClefName {
  const cost = (clef: ClefName): number => steps.reduce((sum, step) => sum + legerLines(step, clef), 0);
  return candidates.reduce((best, clef) => (cost(clef) < cost(best) ? clef : best), candidates[0]);
}
