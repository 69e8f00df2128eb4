import type { Chart } from '../music/chart/chart';
import { transposeKey } from '../music/pitch/key';
import { printedKey } from '../words/spoken';

/** The chart's key and the eleven above it, each spelled as it is customarily written, ready to print; index is semitones up. */
export function keysOf(chart: Pick<Chart, 'key'>): readonly string[] {
  return Array.from({ length: 12 }, (_, semitones) => printedKey(transposeKey(chart.key, semitones)));
}
