import { assert, TICKS_PER_STEP } from '../vocabulary';
import type { Performance, PerformedEvent } from './performance';

/** Bars before the music: the clave on the side that leads into the first bar, and a soft beat on 1 and 3. */
export interface CountIn {
  /** Length; the count-in fills the play ticks [−ticks, 0). */
  readonly ticks: number;
  /** Quarter notes (dotted quarters in 6/8). */
  readonly beatTicks: number;
  /** With `tick` as play tick, below 0, ascending; ids below 0. */
  readonly events: readonly PerformedEvent[];
}

const CLAVE_VELOCITY = 104;
const BEAT_VELOCITY = { first: 84, other: 68 } as const;

/**
 * The count-in of `bars` bars (0 to 2) before the bar at `startTick`: two bars are a whole clave cycle that ends
 * where the music begins, one bar is its second half, so the side is always right. Throws when no bar starts there.
 */
export function countInTo(performance: Performance, startTick: number, bars: 0 | 1 | 2): CountIn {
  const { cycleSteps, steps } = performance.clave;
  const bar = performance.bars.find(({ tick }) => tick === startTick);
  assert(bar !== undefined, `music must start at a bar, got tick ${startTick}`);
  const barSteps = cycleSteps / 2;
  const total = bars * barSteps;
  const startStep = bar.cycleStep;
  const beatSteps = cycleSteps === 12 ? 3 : 4;
  const events: PerformedEvent[] = [];
  for (let back = total; back > 0; back -= 1) {
    const tick = -back * TICKS_PER_STEP;
    const cycleStep = (startStep - (back % cycleSteps) + cycleSteps) % cycleSteps;
    const place = (total - back) % barSteps;
    if (place % beatSteps === 0)
      events.push(
        click(
          events.length,
          'pulse',
          tick,
          place === 0 ? 'pulse high' : 'pulse low',
          place === 0 ? BEAT_VELOCITY.first : BEAT_VELOCITY.other,
        ),
      );
    if (steps.includes(cycleStep)) events.push(click(events.length, 'clave', tick, 'clave', CLAVE_VELOCITY));
  }
  return { ticks: total * TICKS_PER_STEP, beatTicks: cycleSteps === 12 ? 720 : 480, events };
}

function click(index: number, part: 'clave' | 'pulse', tick: number, drum: string, velocity: number): PerformedEvent {
  return { id: -1 - index, part, tick, offsetTicks: 0, soundingTicks: TICKS_PER_STEP, midi: null, drum, velocity, firstPassOnly: false };
}
