import { type HalfNotesPerMinute, halfNotesPerMinute, type InputMillis, TEMPO_RANGE } from '../vocabulary';

/** A longer silence than this begins a new run of taps. */
const TAP_GAP_MS = 3000;
/** Taps kept at most, so that a run follows the hand. */
const KEPT_TAPS = 8;

/** `taps` with one more at `at`; a pause of more than three seconds, or a clock that went back, begins anew. */
export function addTap(taps: readonly InputMillis[], at: InputMillis): readonly InputMillis[] {
  const last = taps.at(-1);
  const goesOn = last !== undefined && at > last && at - last <= TAP_GAP_MS;
  return goesOn ? [...taps, at].slice(-KEPT_TAPS) : [at];
}

/**
 * The tempo of a run of taps, by the median of their distances, held within the tempi on offer.
 * @param unit the note that each tap is
 * @returns null for fewer than two taps
 * @example tapTempo([0, 600, 1200], 'half') is 100 half notes a minute
 */
export function tapTempo(taps: readonly InputMillis[], unit: 'half' | 'quarter'): HalfNotesPerMinute | null {
  const gaps = taps
    .slice(1)
    .map((tap, index) => tap - (taps[index] ?? tap))
    .sort((a, b) => a - b);
  if (gaps.length === 0) return null;
  const middle = gaps.length >> 1;
  const upper = gaps[middle] ?? 0;
  const median = gaps.length % 2 === 1 ? upper : ((gaps[middle - 1] ?? upper) + upper) / 2;
  return heldTempo(60_000 / median / (unit === 'quarter' ? 2 : 1));
}

/** `value` rounded to a whole number and held within the tempi on offer. */
export function heldTempo(value: number): HalfNotesPerMinute {
  return halfNotesPerMinute(Math.min(TEMPO_RANGE.to, Math.max(TEMPO_RANGE.from, Math.round(value))));
}
