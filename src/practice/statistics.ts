/** The arithmetic mean, or null of nothing. */
export const meanOf = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

/** The middle value (mean of the middle two), or null of nothing. */
export function medianOf(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const high = sorted[middle];
  if (high === undefined) return null;
  return sorted.length % 2 === 1 ? high : (high + (sorted[middle - 1] ?? high)) / 2;
}

/** The standard deviation of a sample (divided by one less than its size), or null of fewer than two. */
export function spreadOf(values: readonly number[]): number | null {
  const mean = meanOf(values);
  if (mean === null || values.length < 2) return null;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

/** Standard deviations within which a value counts when mean and spread are taken; of normal values 1 in 2,000 lies outside. */
const OUTLIER = 3.5;
/** Median absolute deviation of a normal distribution to its standard deviation. */
const MAD_TO_SPREAD = 1.4826;

/** The values without those far from the rest (3.5 robust standard deviations from the median): one slip says nothing about a habit. */
export function withoutOutliers(values: readonly number[]): readonly number[] {
  const median = medianOf(values);
  if (median === null || values.length < 5) return values;
  const robust = MAD_TO_SPREAD * (medianOf(values.map((value) => Math.abs(value - median))) ?? 0);
  return robust === 0 ? values : values.filter((value) => Math.abs(value - median) <= OUTLIER * robust);
}

/** The line of least squares through points: slope, and the standard error of the slope; null with fewer than three points. */
export function lineThrough(points: readonly { readonly x: number; readonly y: number }[]) {
  const meanX = meanOf(points.map(({ x }) => x));
  const meanY = meanOf(points.map(({ y }) => y));
  if (meanX === null || meanY === null || points.length < 3) return null;
  const squares = points.reduce((sum, { x }) => sum + (x - meanX) ** 2, 0);
  if (squares === 0) return null;
  const slope = points.reduce((sum, { x, y }) => sum + (x - meanX) * (y - meanY), 0) / squares;
  const left = points.reduce((sum, { x, y }) => sum + (y - meanY - slope * (x - meanX)) ** 2, 0);
  return { slope, error: Math.sqrt(left / (points.length - 2) / squares), meanX, meanY };
}
