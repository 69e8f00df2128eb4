import { countLeading, type Stroke, TICKS_PER_STEP } from '../../vocabulary';
import type { NoteMark } from './cards';

/** A stroke with the stretch of score time it is drawn over; `from` lies before the range when it rings over the seam. */
export interface Ring<Kind extends Stroke = Stroke> {
  readonly stroke: Kind;
  readonly from: number;
  readonly to: number;
}

/** The rings of a part, ascending by `from`, with the length of the longest: what a panel needs to find its own quickly. */
export interface Rings<Kind extends Stroke = Stroke> {
  readonly rings: readonly Ring<Kind>[];
  readonly longest: number;
}

/**
 * Where the strokes of a part ring. In a closed score what rings past the end rings on at the beginning: it is listed a second
 * time, one whole pass earlier, unless a stroke that is struck on the first pass only stands at the very start.
 */
export function ringing<Kind extends Stroke>(
  strokes: readonly Kind[],
  length: (stroke: Kind) => number,
  range: { readonly fromTick: number; readonly toTick: number; readonly closed: boolean },
): Rings<Kind> {
  const rings = strokes.map((stroke) => ({ stroke, from: stroke.tick, to: stroke.tick + length(stroke) }));
  const longest = rings.reduce((most, ring) => Math.max(most, ring.to - ring.from), 0);
  if (!range.closed || strokes.some((stroke) => stroke.firstPassOnly && stroke.tick === range.fromTick)) return { rings, longest };
  const pass = range.toTick - range.fromTick;
  const over = rings.filter((ring) => ring.to > range.toTick && ring.from < range.toTick);
  return { rings: [...over.map((ring) => ({ ...ring, from: ring.from - pass, to: ring.to - pass })), ...rings], longest };
}

/** The rings that are heard between two ticks, as marks of the panel that begins at `tick`. */
export function marksBetween<Kind extends Stroke>(
  { rings, longest }: Rings<Kind>,
  tick: number,
  toTick: number,
): readonly NoteMark<Kind>[] {
  return between(rings, (ring) => ring.from, tick - longest, toTick)
    .filter((ring) => ring.to > tick)
    .map((ring) => ({
      stroke: ring.stroke,
      step: (ring.from - tick) / TICKS_PER_STEP,
      steps: (ring.to - ring.from) / TICKS_PER_STEP,
      ringsIn: ring.from < tick,
      ringsOut: ring.to > toTick,
    }));
}

/** The items of an ascending list whose place lies in [from, to), found by halving. */
export function between<Item>(items: readonly Item[], place: (item: Item) => number, from: number, to: number): readonly Item[] {
  const before = (end: number): number => countLeading(items, (item) => place(item) < end);
  return items.slice(before(from), before(to));
}
