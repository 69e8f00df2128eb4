import type { Performance } from '../../performance/performance';
import type { Tally } from './listening-state';

/** The tally with one more whole pass; another loop begins a new one. */
export function tallied(before: Tally | null, { fromTick, toTick }: Performance, clean: boolean): Tally {
  const same = before?.fromTick === fromTick && before.toTick === toTick ? before : { passes: 0, clean: 0, cleanInARow: 0 };
  return {
    fromTick,
    toTick,
    passes: same.passes + 1,
    clean: same.clean + (clean ? 1 : 0),
    cleanInARow: clean ? same.cleanInARow + 1 : 0,
  };
}
