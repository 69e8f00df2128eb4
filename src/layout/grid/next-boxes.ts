import { printedNote } from '../../words/spoken';
import type { Panel } from './cards';
import { type ChordBox, chordPlaces, type Lettering, type Point } from './chord-places';
import { isOuter } from './contour';
import { PANEL_WIDTH } from './frame';
import type { Box } from './hand-boxes';
import { NEXT_FOOT, NEXT_SIZES } from './next-sizes';
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

/** Boxes of a panel of the next card. */
export function nextBoxes(panel: Panel, narrow: boolean, enlarged: number): NextBoxes {
  const plain = narrow ? NEXT_SIZES.narrow : NEXT_SIZES.wide;
  const size = Object.fromEntries(Object.entries(plain).map(([name, each]) => [name, each * enlarged])) as typeof plain;
  const cell = PANEL_WIDTH / panel.fullSteps;
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
    width: PANEL_WIDTH,
    height: size.chords + size.counts + size.notes + NEXT_FOOT * enlarged,
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
