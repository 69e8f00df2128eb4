import { readChart } from '../../src/music/chart/read';
import { BENCH_SEED, benchChart } from './bench-chart';
import { growthExponent, mediansMs, overFloor, type Results } from './measure';

/** Reading chart text, in nanoseconds a bar. The floor only cuts the same text into lines and words. */
export function measureChart(): Results {
  const perBar = (bars: number, runs: number): readonly [number, number] => {
    const text = benchChart(bars, BENCH_SEED);
    const [read, cut] = mediansMs(
      () => readChart(text),
      () => text.split('\n').map((line) => line.match(/\S+/g)),
      runs,
    );
    return [(read * 1e6) / bars, (cut * 1e6) / bars];
  };
  const [ns32, cut32] = perBar(32, 400);
  const [ns100] = perBar(100, 200);
  const [ns1000, cut1000] = perBar(1000, 60);
  return {
    readChart32NsPerBar: overFloor(ns32, cut32, 'cutting the same text into lines and words'),
    readChart1000NsPerBar: overFloor(ns1000, cut1000, 'cutting the same text into lines and words'),
    readChartExponent: growthExponent([
      [32, ns32 * 32],
      [100, ns100 * 100],
      [1000, ns1000 * 1000],
    ]),
  };
}
