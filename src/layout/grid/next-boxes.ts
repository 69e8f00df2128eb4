import { chordText, noteLetter } from '../../words/grid';
import type { ChordMark, Panel } from './cards';
import { isOuter } from './contour';
import type { Box, Lettering, Point } from './panel-boxes';
import { fittedLine, typeLine } from './type-run';

/** A panel of the next card, drawn small: chords, count with the clave in it, the octave's note under each place where it changes or is struck. */
export interface NextBoxes {
  readonly width: number;
  readonly height: number;
  readonly cell: number;
  readonly chords: readonly { readonly mark: ChordMark; readonly lettering: Lettering; readonly tie: { readonly from: Point; readonly to: Point } | null }[];
  readonly counts: readonly { readonly text: string; readonly strong: boolean; readonly clave: boolean; readonly x: number; readonly y: number; readonly size: number }[];
  readonly diamonds: readonly (Point & { readonly radius: number })[];
  readonly octaves: readonly (Box & { readonly lettering: Lettering })[];
  readonly inner: readonly Point[];
  readonly rule: number;
}

/** Sizes of the two forms of the next card, in the units of `frame.ts`. On a phone two panels share the width of one, so type is larger in units. */
const SIZES = {
  wide: { width: 624, chord: 44, chords: 52, count: 23, counts: 36, note: 27, notes: 36 },
  narrow: { width: 624, chord: 62, chords: 72, count: 40, counts: 58, note: 46, notes: 58 },
};

/** Boxes of a panel of the next card. */
export function nextBoxes(panel: Panel, narrow: boolean, showEchoes: boolean): NextBoxes {
  const size = narrow ? SIZES.narrow : SIZES.wide;
  const cell = size.width / panel.fullSteps;
  const edge = panel.steps * cell;
  const countY = size.chords + size.counts / 2;
  const noteY = size.chords + size.counts + size.notes / 2;
  const shown = panel.chords.filter((mark) => mark.kind !== 'echo' || showEchoes || mark.step > 0);
  const chords = shown.map((mark, at) => {
    const next = shown[at + 1];
    const left = mark.step * cell + 10;
    const room = next ? next.step * cell - left - 8 : Math.max(edge - left - 8, edge * 0.45);
    const line = fittedLine(chordText(mark.symbol), mark.kind === 'played' ? size.chord : size.chord * 0.82, Math.max(cell, room), size.chord * 0.5);
    const x = Math.min(left, edge - line.width - 8);
    const y = size.chords - (narrow ? 14 : 11);
    const tie = mark.tieTo === null ? null : { from: { x: Math.max(x + 6, mark.step * cell + cell / 2 - 8), y: y + 6 }, to: { x: mark.tieTo * cell + 22, y: y + 6 } };
    return { mark, lettering: { ...line, x, y }, tie };
  });
  const octaves = panel.right
    .filter((mark) => !mark.ringsIn && isOuter(mark.stroke))
    .map((mark) => {
      const line = typeLine(noteLetter(mark.stroke.names[0] ?? ''), size.note);
      const centre = (mark.step + 0.5) * cell;
      const width = Math.max(cell * 0.55, line.width + 12);
      return { x: centre - width / 2, y: noteY - size.notes / 2 + 3, width, height: size.notes - 6, lettering: { ...line, size: size.note, x: centre - line.width / 2, y: noteY + size.note * 0.345 } };
    });
  return {
    width: size.width,
    height: size.chords + size.counts + size.notes + 4,
    cell,
    chords,
    counts: panel.counts.map((count) => ({ text: count.text, strong: count.strong, clave: panel.claveSteps.includes(count.step), x: (count.step + 0.5) * cell, y: countY + size.count * 0.345, size: count.strong ? size.count * 1.1 : size.count })),
    diamonds: panel.claveSteps.map((step) => ({ x: (step + 0.5) * cell, y: countY, radius: size.counts * 0.56 })),
    octaves,
    inner: panel.right.filter((mark) => !mark.ringsIn && !isOuter(mark.stroke)).map((mark) => ({ x: (mark.step + 0.5) * cell, y: noteY })),
    rule: size.chords,
  };
}
