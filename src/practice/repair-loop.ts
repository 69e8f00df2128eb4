import type { Performance } from '../performance/performance';
import type { LoopBars } from './finding';
import type { LabelledStroke } from './labelled';

/**
 * The loop that would mend what went wrong in `bar`: the clave cycle that holds it, and with `before` also the bar that leads into it.
 * Never outside the performance; whole cycles wherever the performance has them.
 */
export function loopAround({ bars }: Performance, bar: number, before = 0): LoopBars {
  const starts = (index: number): boolean => (bars[index]?.cycleStep ?? 0) === 0;
  let fromBar = Math.max(0, Math.min(bar - before, bars.length - 1));
  while (fromBar > 0 && !starts(fromBar)) fromBar -= 1;
  let toBar = Math.min(bars.length, bar + 1);
  while (toBar < bars.length && (!starts(toBar) || toBar - fromBar < 2)) toBar += 1;
  return { fromBar, toBar };
}

/** The bars [fromBar, toBar), widened to whole cycles wherever the performance has them. */
export const loopOver = (performance: Performance, { fromBar, toBar }: LoopBars): LoopBars => ({
  fromBar: loopAround(performance, fromBar).fromBar,
  toBar: loopAround(performance, toBar - 1).toBar,
});

/** The whole performance, or its first four bars when it is longer than eight: for habits that are everywhere. */
export function loopOfHabit(performance: Performance): LoopBars {
  const { length } = performance.bars;
  return length <= 8 ? { fromBar: 0, toBar: length } : loopAround(performance, 3, 3);
}

/** The bar in which most of the strokes lie; the first of several. Strokes must have been asked for; 0 of none. */
export function worstBar(strokes: readonly LabelledStroke[]): number {
  return mostFrequent(strokes.flatMap(({ expected }) => (expected ? [expected.bar] : []))) ?? 0;
}

/** The value that occurs most often, the first of several; null of nothing. */
export function mostFrequent<Value>(values: readonly Value[]): Value | null {
  const counts = new Map<Value, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  let best: Value | null = null;
  for (const [value, count] of counts) if (best === null || count > (counts.get(best) ?? 0)) best = value;
  return best;
}
