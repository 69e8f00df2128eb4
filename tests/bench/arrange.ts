import { readChart } from '../../src/music/chart/read';
import type { PatternId } from '../../src/music/percussion/patterns';
import { type ArrangeOptions, arrange, type Score } from '../../src/music/score';
import { BENCH_SEED, benchChart } from './bench-chart';
import { FRAME_MS, growthExponent, mediansMs, ofBudget, overFloor, type Results } from './measure';

/** Every instrument of a full band. */
const EVERYTHING: readonly PatternId[] = [
  'cascara',
  'mambo bell',
  'timbales low drum',
  'abanico',
  'bongo bell',
  'martillo',
  'conga two drums',
  'guiro',
  'maracas',
];

/** A score of the bench's own chart. */
export function scoreOf(text: string, options: ArrangeOptions = { level: 3 }): Score {
  const read = readChart(text);
  if (!read.ok) throw new Error(`the bench's own chart has a fault: ${JSON.stringify(read.faults[0])}`);
  return arrange(read.value, options);
}

/** From the text of a chart to the full Score (E13): by length, and at level 6 with every percussion part. The floor writes the same Score as JSON. */
export function measureArrange(): Results {
  const timed = (bars: number, runs: number, options?: ArrangeOptions) => {
    const text = benchChart(bars, BENCH_SEED);
    const score = scoreOf(text, options);
    return mediansMs(
      () => scoreOf(text, options),
      () => JSON.stringify(score),
      runs,
    );
  };
  const [ms32, json32] = timed(32, 200);
  const [busiest32Ms] = timed(32, 200, { level: 6, style: 'salsa', percussion: EVERYTHING });
  const [ms100, json100] = timed(100, 60);
  const [ms1000, json1000] = timed(1000, 15);
  const is = 'JSON.stringify of the same Score';
  return {
    arrange32Ms: ofBudget(ms32, FRAME_MS, 'one frame of the display'),
    busiest32Ms: ofBudget(busiest32Ms, FRAME_MS, 'one frame of the display'),
    arrange32OverJson: overFloor(ms32, json32, is),
    arrange100Ms: overFloor(ms100, json100, is),
    arrange1000Ms: overFloor(ms1000, json1000, is),
    growth1000over100: ms1000 / ms100,
    arrangeExponent: growthExponent([
      [32, ms32],
      [100, ms100],
      [1000, ms1000],
    ]),
  };
}
