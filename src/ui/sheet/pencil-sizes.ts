import type { ListBarPlace } from '../../layout/sheet/list-geometry';
import type { ListChord } from '../../layout/sheet/pencil-list';

/** Rows of a line of bars, as shares of its height from its top: octave notes, chords, signs. */
export const ROWS = { octave: 0.26, chord: 0.66, signs: 0.94 } as const;
/** Sizes of type, as shares of the height of a line, and the largest in millimetres. */
const SIZES = { octave: [0.26, 7], chord: [0.38, 11], signs: [0.2, 5], letter: [0.56, 15], side: [0.22, 6] } as const;

/** Size of the type of a row, in millimetres. */
export type SizeOf = (row: keyof typeof SIZES) => number;
/** The sizes for lines of a height. */
export const sizesFor =
  (lineHeight: number): SizeOf =>
  (row) =>
    Math.min(SIZES[row][0] * lineHeight, SIZES[row][1]);

/** Widths of letters in bold Atkinson Hyperlegible Next, as shares of the size of the type, measured and rounded up; the flat and the sharp of its fallback. */
const WIDTHS: Readonly<Record<string, number>> = {
  m: 0.96,
  M: 0.92,
  W: 1,
  w: 0.86,
  '♭': 0.5,
  '♯': 0.62,
  j: 0.34,
  i: 0.32,
  l: 0.34,
  ' ': 0.28,
  '/': 0.46,
  ',': 0.32,
  '.': 0.32,
  '-': 0.42,
  '(': 0.4,
  ')': 0.4,
};
const USUAL_WIDTH = 0.66;

/** Width of a text in bold type of size 1; rather too much than too little. */
export const textWidth = (text: string): number => [...text].reduce((sum, letter) => sum + (WIDTHS[letter] ?? USUAL_WIDTH), 0);

/** A chord as it is written, with the sign of a push. */
export const chordText = (chord: ListChord): string => (chord.push ? '> ' : '') + chord.text;

/** From a barline to the first chord, with and without a repeat sign, and free space behind the last. */
const INSET = 1.6;
const REPEAT_INSET = 3.2;
const GAP = 1.2;

const insetOf = ({ bar }: ListBarPlace): number => (bar.repeatStart ? REPEAT_INSET : INSET);

/** Where a chord at a share of its bar begins. */
export const chordX = (place: ListBarPlace, at: number): number => place.x + insetOf(place) + at * (place.width - insetOf(place));

/** The size that all chords of a line can take without running into each other. */
export function chordSizeOf(line: readonly ListBarPlace[], usual: number): number {
  const rooms = line.flatMap((place) => {
    const end = place.x + place.width - (place.bar.repeatEnd === null ? 0 : REPEAT_INSET - INSET);
    return place.bar.chords.map((chord, i) => {
      const next = place.bar.chords[i + 1];
      return ((next ? chordX(place, next.at) : end) - chordX(place, chord.at) - GAP) / Math.max(textWidth(chordText(chord)), 1);
    });
  });
  return Math.min(usual, ...rooms);
}
