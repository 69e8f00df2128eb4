/*
 * The ceiling: straight up to a knee, then bending so that nothing ever passes the limit. It has no memory, so it
 * adds no delay and never pumps; at the default mix the music stays below the knee.
 */

/** Peak of the summed parts up to which nothing changes. */
export const CEILING_KNEE = 0.75;
/** What no sum can pass. */
export const CEILING_LIMIT = 0.97;
/** The sum that reaches the end of the curve; scale the input by its inverse. */
export const CEILING_INPUT = 4;

/** What a sum of parts becomes. Odd, rising, the identity below the knee. */
export function underCeiling(sum: number): number {
  const size = Math.abs(sum);
  if (size <= CEILING_KNEE) return sum;
  const room = CEILING_LIMIT - CEILING_KNEE;
  return Math.sign(sum) * (CEILING_KNEE + room * Math.tanh((size - CEILING_KNEE) / room));
}

/** The curve for a wave shaper whose input is the sum divided by `CEILING_INPUT`. Zero lies exactly on a point. */
export function ceilingCurve(points = 8193): Float32Array {
  return Float32Array.from({ length: points }, (_, index) => underCeiling(((2 * index) / (points - 1) - 1) * CEILING_INPUT));
}
