/**
 * `npm run bench`: prints one JSON object. `arrange32Ms` is the median of 200 runs, after warm-up, from the text of a 32-bar
 * chart to the full Score (E13); `busiest32Ms` the same at level 6 with every percussion part; `growth1000over100` compares the medians
 * of 1,000 and 100 bars; `firstSoundMs` is measured in a real browser against the built page; `pack` is a pack of 12 keys of a 32-bar
 * chart by stage. Timed, so no part of `npm test`.
 */
import { cpus } from 'node:os';
import { readChart } from '../../src/music/chart/read';
import type { PatternId } from '../../src/music/percussion/patterns';
import { type ArrangeOptions, arrange } from '../../src/music/score';
import { benchChart } from './bench-chart';
import { measureFirstSound } from './first-sound';
import { measurePack } from './pack';

const WARM_UP_RUNS = 50;
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
const SEED = 20_260_101;

function scoreOf(text: string, options: ArrangeOptions = { level: 3 }) {
  const read = readChart(text);
  if (!read.ok) throw new Error(`the bench's own chart has a fault: ${JSON.stringify(read.faults[0])}`);
  return arrange(read.value, options);
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** Median milliseconds of `runs` runs from chart text to Score. */
function medianMs(text: string, runs: number, warmUp: number, options?: ArrangeOptions): number {
  for (let run = 0; run < warmUp; run += 1) scoreOf(text, options);
  const times = Array.from({ length: runs }, () => {
    const from = performance.now();
    scoreOf(text, options);
    return performance.now() - from;
  });
  return median(times);
}

const round = (value: number, digits: number) => Number(value.toFixed(digits));

const arrange32Ms = medianMs(benchChart(32, SEED), 200, WARM_UP_RUNS);
const busiest32Ms = medianMs(benchChart(32, SEED), 200, WARM_UP_RUNS, { level: 6, style: 'salsa', percussion: EVERYTHING });
const arrange100Ms = medianMs(benchChart(100, SEED), 40, 5);
const arrange1000Ms = medianMs(benchChart(1000, SEED), 15, 2);
const firstSoundMs = process.argv.includes('--engine-only') ? null : await measureFirstSound();

const pack = await measurePack(SEED);

const report = {
  arrange32Ms: round(arrange32Ms, 2),
  busiest32Ms: round(busiest32Ms, 2),
  growth1000over100: round(arrange1000Ms / arrange100Ms, 2),
  arrange100Ms: round(arrange100Ms, 2),
  arrange1000Ms: round(arrange1000Ms, 2),
  firstSoundMs,
  pack,
  node: process.version,
  cpu: cpus()[0]?.model ?? 'unknown',
  cores: cpus().length,
};
console.log(JSON.stringify(report, null, 2));
