import type { ClockMap, ClockPair } from '../../performance/clock-map';
import { fitClocks, toInput } from '../../performance/clock-map';

/*
 * The line between what is heard and the clock of the inputs, through the readings of the last minutes. A reading far off the line is a
 * clock that jumped (the machine slept, the output was changed): the line begins anew there.
 */

/** Readings kept: two minutes at two a second. */
const READINGS = 240;
/** No jitter of a reading is larger than this. */
const JUMP_MS = 60;

/** Readings of the clocks, as they come. */
export interface ClockTrack {
  /** Takes a reading; says whether the clocks have jumped since the one before. */
  read(pair: ClockPair): 'steady' | 'jumped';
  /** The line, or null before the first reading. */
  map(): ClockMap | null;
}

/** A track that has read nothing. */
export function createClockTrack(): ClockTrack {
  let pairs: ClockPair[] = [];
  let map: ClockMap | null = null;
  return {
    read(pair) {
      const jumped = map !== null && Math.abs(toInput(map, pair.audio) - pair.input) > JUMP_MS;
      if (jumped) pairs = [];
      pairs.push(pair);
      if (pairs.length > READINGS) pairs.shift();
      map = fitClocks(pairs);
      return jumped ? 'jumped' : 'steady';
    },
    map: () => map,
  };
}
