import type { PartName, Performance, PerformedEvent } from '../../src/performance/performance';
import { halfNotesPerMinute } from '../../src/vocabulary';

/** Son clave 2-3 on eighths: . . x . x . . . | x . . x . . x . (common practice; any handbook of Cuban rhythm prints it). */
export const SON_2_3 = [2, 4, 8, 11, 14];
/** The same with its bars exchanged. */
export const SON_3_2 = [0, 3, 6, 10, 12];

/** One event of a hand-made performance; everything missing is plain. */
export type EventSketch = Partial<PerformedEvent> & { readonly tick: number };

/** Events with ids in the order given, then sorted as a performance holds them. */
export function events(...sketches: readonly EventSketch[]): PerformedEvent[] {
  return sketches
    .map((sketch, id) => ({
      id,
      part: 'piano right' as PartName,
      offsetTicks: 0,
      soundingTicks: 200,
      midi: 60,
      drum: null,
      velocity: 90,
      firstPassOnly: false,
      ...sketch,
    }))
    .sort((a, b) => a.tick + a.offsetTicks - (b.tick + b.offsetTicks) || a.id - b.id);
}

/** A 4/4 performance of whole bars from bar `fromBar` on, in 2-3 son unless said otherwise. */
export function performanceOf(
  bars: number,
  made: readonly PerformedEvent[],
  { fromBar = 0, closed = true, clave = SON_2_3 }: { fromBar?: number; closed?: boolean; clave?: readonly number[] } = {},
): Performance {
  const list = Array.from({ length: bars }, (_, index) => ({
    tick: (fromBar + index) * 1920,
    ticks: 1920,
    cycleStep: ((fromBar + index) % 2) * 8,
  }));
  return {
    events: made,
    fromTick: fromBar * 1920,
    toTick: (fromBar + bars) * 1920,
    closed,
    cycleStarts: list.filter(({ cycleStep }) => cycleStep === 0).map(({ tick }) => tick),
    bars: list,
    clave: { steps: clave, cycleSteps: 16 },
    tempo: halfNotesPerMinute(100),
  };
}

/** Everything inside made read-only at run time too, so that a function that changes its input throws. */
export function deepFreeze<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFreeze(inner);
  }
  return value;
}
