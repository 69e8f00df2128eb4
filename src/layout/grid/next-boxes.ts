import { printedNote } from '../../words/spoken';
import type { Panel } from './cards';
import { type ChordBox, chordPlaces, type Lettering, type Point } from './chord-places';
import { isOuter } from './contour';
import type { Box } from './hand-boxes';
import { typeLine } from './type-run';

/** A panel of the next card, drawn small: chords, count with the clave in it, the octave's note under each place where it changes or is struck. */
export interface NextBoxes {
  readonly width: number;
  readonly height: number;
  readonly cell: number;
  readonly chords: readonly ChordBox[];
  readonly counts: readonly {
    readonly text: string;
    readonly strong: boolean;
    readonly clave: boolean;
    readonly x: number;
    readonly y: number;
    readonly size: number;
  }[];
  readonly diamonds: readonly (Point & { readonly radius: number })[];
  readonly octaves: readonly (Box & { readonly lettering: Lettering })[];
  readonly inner: readonly Point[];
  readonly rule: number;
}

/** Sizes of the two forms of the next card, in the units of `frame.ts`. On a phone two panels share the width of one, so type is larger in units. */
const SIZES = {
  wide: { width: 624, chord: 44, chords: 52, count: 23, counts: 36, note: 27, notes: 36 },
  enlarged: { width: 624, chord: 55, chords: 65, count: 29, counts: 45, note: 33, notes: 45 },
  narrow: { width: 624, chord: 62, chords: 72, count: 40, counts: 58, note: 44, notes: 56 },
};

/** How the next card is drawn: beside a wide card, beside an enlarged one, or on a phone. */
export type NextSize = keyof typeof SIZES;

/** Boxes of a panel of the next card. */
export function nextBoxes(panel: Panel, kind: NextSize): NextBoxes {
  const size = SIZES[kind];
  const cell = size.width / panel.fullSteps;
  const countY = size.chords + size.counts / 2;
  const noteY = size.chords + size.counts + size.notes / 2;
  const octaves = panel.right
    .filter((mark) => !mark.ringsIn && isOuter(mark.stroke))
    .map((mark) => {
      const line = typeLine(printedNote(mark.stroke.names[0] ?? ''), size.note);
      const centre = (mark.step + 0.5) * cell;
      const width = Math.max(cell * 0.55, line.width + 10);
      return {
        x: centre - width / 2,
        y: noteY - size.notes / 2 + 3,
        width,
        height: size.notes - 6,
        lettering: { ...line, size: size.note, x: centre - line.width / 2, y: noteY + size.note * 0.345 },
      };
    });
  return {
    width: size.width,
    height: size.chords + size.counts + size.notes + 4,
    cell,
    chords: chordPlaces(panel.bar.playing === 'band' ? panel.chords : [], {
      cell,
      steps: panel.steps,
      baseline: size.chords - size.chord * 0.24,
      size: size.chord,
    }),
    counts: panel.counts.map((count) => ({
      text: count.text,
      strong: count.strong,
      clave: panel.claveSteps.includes(count.step),
      x: (count.step + 0.5) * cell,
      y: countY + size.count * 0.345,
      size: count.strong ? size.count * 1.1 : size.count,
    })),
    diamonds: panel.claveSteps.map((step) => ({ x: (step + 0.5) * cell, y: countY, radius: size.counts * 0.56 })),
    octaves,
    inner: panel.right.filter((mark) => !mark.ringsIn && !isOuter(mark.stroke)).map((mark) => ({ x: (mark.step + 0.5) * cell, y: noteY })),
    rule: size.chords,
  };
}
