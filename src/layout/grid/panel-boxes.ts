import type { PianoStroke } from '../../vocabulary';
import type { NoteMark, Panel } from './cards';
import { type ChordBox, chordPlaces, type Point } from './chord-places';
import { type ContourScale, isOuter, outerY } from './contour';
import { cellWidth, type Frame, middleOf } from './frame';
import { type BassBox, bassBox, type HandBox, isCrowded, type LeftRange, leftBox, rightBox } from './hand-boxes';

/** Everything drawn in a panel's lanes, in units. */
export interface PanelBoxes {
  readonly frame: Frame;
  readonly cell: number;
  readonly chords: readonly ChordBox[];
  readonly diamonds: readonly Point[];
  readonly right: readonly HandBox[];
  readonly left: readonly HandBox[];
  readonly bass: readonly BassBox[];
  /** The octave line, from the outer note before the panel to the one after it; points may lie outside the panel. */
  readonly line: readonly Point[];
  readonly hits: readonly (Point & { readonly held: boolean })[];
}

/** The panels before and after, as they sound: the octave line comes from one and goes to the other. */
export interface Neighbours {
  readonly before: Panel | null;
  readonly after: Panel | null;
  /** True where the eye begins: the first panel of a card, and every panel where they stack. */
  readonly opens: boolean;
}

/** All boxes of a panel. */
export function panelBoxes(panel: Panel, frame: Frame, scale: ContourScale, range: LeftRange, neighbours: Neighbours): PanelBoxes {
  const cell = cellWidth(frame, panel.fullSteps);
  const centre = (step: number) => (step + 0.5) * cell;
  const { chords } = frame.lanes;
  return {
    frame,
    cell,
    chords: chordPlaces(panel.bar.playing === 'band' ? panel.chords : [], {
      cell,
      steps: panel.steps,
      baseline: chords.top + chords.height - 12,
      size: frame.type.chord,
    }),
    diamonds: panel.claveSteps.map((step) => ({ x: centre(step), y: middleOf(frame, 'clave') })),
    right: panel.right.map((mark) => rightBox(mark, { cell, crowded: isCrowded(mark, panel.right) }, frame, scale, panel.steps)),
    left: panel.left.map((mark) => leftBox(mark, { cell, crowded: isCrowded(mark, panel.left) }, frame, range)),
    bass: panel.bass.map((mark) => bassBox(mark, cell, frame, neighbours.opens)),
    line: octaveLine(panel, neighbours, scale, cell),
    hits: panel.hits.map((hit) => ({ x: centre(hit.step), y: middleOf(frame, 'clave'), held: hit.held })),
  };
}

function octaveLine(panel: Panel, { before, after }: Neighbours, scale: ContourScale, cell: number): readonly Point[] {
  const outers = (of: Panel) => of.right.filter((mark) => !mark.ringsIn && isOuter(mark.stroke));
  const point = (mark: NoteMark<PianoStroke>, shift: number): Point => ({
    x: (mark.step + 0.5 + shift) * cell,
    y: outerY(scale, mark.stroke.midi[0] ?? 60),
  });
  const own = outers(panel);
  if (own.length === 0) return [];
  const previous = before && outers(before).at(-1);
  const following = after && outers(after)[0];
  return [
    ...(previous ? [point(previous, -before.steps)] : []),
    ...own.map((mark) => point(mark, 0)),
    ...(following ? [point(following, panel.steps)] : []),
  ];
}
