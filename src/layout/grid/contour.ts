/**
 * How high things are drawn in the right hand's lane. The octave's lower note follows a scale larger than life, so that a half
 * step is seen from afar; the bracket that stands on it has one height, so an octave always looks like an octave; inner notes
 * follow a true scale of their own, so that a note that stays, stays.
 */
import type { PianoStroke } from '../../vocabulary';
import type { Panel, StepGrid } from './cards';
import type { Lane } from './frame';

/** The scale of the right hand's lane for one card. */
export interface ContourScale {
  /** Height of an octave bracket, centre to centre. */
  readonly bracket: number;
  /** Units to the semitone for the outer line. */
  readonly outer: number;
  /** The lower note that stands at the middle. */
  readonly middle: number;
  readonly lane: Lane;
  /** Height of a named block or bead. */
  readonly mark: number;
}

/** Height of the cap at its upper end. */
export const CAP = 13;
const LARGEST_STEP = 34;

/** True for a stroke that carries the outer line; a pickup leads into it. */
export const isOuter = (stroke: PianoStroke): boolean => stroke.role !== 'inner';

/** The scale for the panels of one card, given the range of the whole form: the form's own middle where its range allows a clear scale, else the card's. */
export function contourScale(card: readonly Panel[], whole: StepGrid['outerRange'], lane: Lane, mark: number): ContourScale {
  const bracket = Math.min(160, Math.max(1.9 * mark, lane.height * 0.38));
  const room = lane.height - bracket - (mark + CAP) / 2 - 4;
  const own = outerRange(card);
  const wide = room / Math.max(2, whole.high - whole.low);
  const range = wide >= 14 ? whole : own;
  const outer = Math.min(LARGEST_STEP, room / Math.max(2, range.high - range.low));
  return { bracket, outer, middle: (range.low + range.high) / 2, lane, mark };
}

/** The lowest and highest note of the octave line in some panels. */
export function outerRange(panels: readonly Panel[]): { readonly low: number; readonly high: number } {
  const lows = panels.flatMap((panel) => panel.right.filter((mark) => isOuter(mark.stroke)).map((mark) => mark.stroke.midi[0] ?? 72));
  const notes = lows.length > 0 ? lows : panels.flatMap((panel) => panel.right.flatMap((mark) => mark.stroke.midi));
  const range = notes.reduce((so, note) => ({ low: Math.min(so.low, note), high: Math.max(so.high, note) }), { low: 127, high: 0 });
  return notes.length === 0 ? { low: 72, high: 72 } : range;
}

/** Where the lower end of an outer stroke is drawn (centre of its block). */
export function outerY(scale: ContourScale, midi: number): number {
  return held(scale, standing(scale) - (midi - scale.middle) * scale.outer);
}

/** Where an inner note is drawn. */
export function innerY(scale: ContourScale, midi: number): number {
  return held(scale, standing(scale) - ((midi - scale.middle) * scale.bracket) / 12);
}

/** Where the lower end stands for the middle note, so that bracket, block and cap lie in the lane's middle. */
const standing = (scale: ContourScale): number => scale.lane.top + (scale.lane.height + scale.bracket - (scale.mark - CAP) / 2) / 2;

const held = (scale: ContourScale, y: number): number =>
  Math.min(scale.lane.top + scale.lane.height - scale.mark / 2, Math.max(scale.lane.top + scale.mark / 2, y));

/** Heights pushed apart until none is nearer than `gap` to the next; `heights` descend or ascend, their mean stays. */
export function spread(heights: readonly number[], gap: number): readonly number[] {
  const order = heights.map((y, at) => ({ y, at })).sort((one, other) => one.y - other.y);
  const placed = order.map((entry) => entry.y);
  for (let at = 1; at < placed.length; at++) placed[at] = Math.max(placed[at] ?? 0, (placed[at - 1] ?? 0) + gap);
  const shift = (sum(placed) - sum(heights)) / Math.max(1, heights.length);
  const result = [...heights];
  order.forEach((entry, at) => {
    result[entry.at] = (placed[at] ?? entry.y) - shift;
  });
  return result;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
