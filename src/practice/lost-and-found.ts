import type { Performance, PerformedEvent } from '../performance/performance';
import { assert } from '../vocabulary';
import type { Matched } from './labelled';
import { oneOf, seeded } from './seeded';

/*
 * Lost and found: the band goes round the coro once more, or drops a bar, without a word; the score is the number of bars until the
 * player is back on the right side. Seeded, so that a teacher can set the same one.
 *
 *   const plan = planSurprises({ bars: 16, seed: 3, rounds: 3 });
 *   const music = rearranged(performance, plan.order);      // play this, once through
 *   barsUntilBack(matched, music, plan.surprises[0].atBar)  // after matching the take against `music`
 */

/** What the band does without warning. `atBar` counts bars as they sound. */
export interface Surprise {
  readonly atBar: number;
  /** `again`: the last bars once more, the side stays. `dropped`: one bar is missing, and the other side comes at once. */
  readonly kind: 'again' | 'dropped';
  readonly bars: number;
}

/** The bars in the order in which they sound, and what is surprising about it. */
export interface SurprisePlan {
  readonly order: readonly number[];
  readonly surprises: readonly Surprise[];
}

/** Bars of peace at the beginning, and between two surprises. */
const PEACE_BARS = 6;
/** Chance of a surprise at each place where one may come. */
const CHANCE = 0.45;

/** Surprises over `rounds` times through `bars` bars. They come at the start of a clave cycle, never in the first or last six bars. */
export function planSurprises({
  bars,
  seed,
  rounds,
}: {
  readonly bars: number;
  readonly seed: number;
  readonly rounds: number;
}): SurprisePlan {
  assert(bars >= 2 && rounds >= 1, `surprises need two bars and one round, got ${bars} and ${rounds}`);
  const random = seeded(seed);
  const order: number[] = [];
  const surprises: Surprise[] = [];
  let last = 0;
  const whole = bars * rounds;
  for (let played = 0; played < whole; played += 1) {
    const bar = played % bars;
    const may = bar % 2 === 0 && order.length - last >= PEACE_BARS && whole - played > PEACE_BARS;
    if (may && random() < CHANCE) {
      const kind = oneOf(['again', 'again', 'dropped'] as const, random);
      last = order.length;
      if (kind === 'dropped') {
        surprises.push({ atBar: order.length, kind, bars: 1 });
        continue;
      }
      const back = oneOf([2, 4], random);
      surprises.push({ atBar: order.length, kind, bars: back });
      order.push(...order.slice(-back));
    }
    order.push(bar);
  }
  return { order, surprises };
}

/** A performance with its bars in another order, played once. Every part goes along, the clave too: the band jumps as one. */
export function rearranged(performance: Performance, order: readonly number[]): Performance {
  const events: PerformedEvent[] = [];
  const bars: { tick: number; ticks: number; cycleStep: number }[] = [];
  let tick = 0;
  order.forEach((index, place) => {
    const bar = performance.bars[index];
    assert(bar !== undefined, `bars must lie in 0 to ${performance.bars.length - 1}, got ${index}`);
    for (const event of performance.events) {
      const inside = event.tick >= bar.tick && event.tick < bar.tick + bar.ticks;
      if (!inside || (event.firstPassOnly && place !== 0)) continue;
      events.push({ ...event, id: events.length, tick: tick + event.tick - bar.tick, firstPassOnly: false });
    }
    bars.push({ ...bar, tick });
    tick += bar.ticks;
  });
  const sorted = events.sort((a, b) => a.tick + a.offsetTicks - (b.tick + b.offsetTicks) || a.id - b.id);
  const { clave, tempo } = performance;
  const cycleStarts = bars.filter(({ cycleStep }) => cycleStep === 0).map((bar) => bar.tick);
  return { events: sorted, fromTick: 0, toTick: tick, closed: false, cycleStarts, bars, clave, tempo };
}

/** A bar counts as found when this share of its strokes is right. */
const FOUND_SHARE = 0.7;

/** Bars from a surprise until two bars running are right again (0: at once), or null when that never comes. */
export function barsUntilBack(
  { strokes, stretches }: Pick<Matched, 'strokes' | 'stretches'>,
  music: Performance,
  atBar: number,
): number | null {
  const found = (index: number): boolean => {
    const bar = music.bars[index];
    if (!bar) return true;
    const asked = strokes.filter(({ expected, playTick }) => expected && playTick >= bar.tick && playTick < bar.tick + bar.ticks);
    const right = asked.filter(({ label, playTick }) => {
      const stretch = stretches.find(({ toPlayTick }) => playTick < toPlayTick);
      return stretch?.displacedSteps === 0 && (label === 'right' || label === 'early' || label === 'late');
    });
    return right.length >= FOUND_SHARE * asked.length;
  };
  for (let bar = atBar; bar < music.bars.length; bar += 1) if (found(bar) && found(bar + 1)) return bar - atBar;
  return null;
}
