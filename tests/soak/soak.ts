import { type ChromiumSoak, soakInChromium } from './soak-in-chromium';
import { soakPage } from './soak-page';
import { type SoakReport, soakPlayer } from './soak-player';

/**
 * `npm run soak -- [minutes] [seed]`: 60 minutes of simulated time with random live changes. `npm run soak -- simulated [minutes] [seed]`: the same in
 * a page of Chromium. `npm run soak -- browser [minutes] [seed]`: the built page in Chromium, in real time, under four burdens in turn. JSON; exits
 * 1 when an onset is lost, doubled, late or misplaced, or when the page leaks.
 */
const WAYS = ['simulated', 'browser'] as const;
const way = WAYS.find((one) => one === process.argv[2]) ?? 'here';
const [minutes = way === 'browser' ? 10 : 60, seed = 1] = process.argv.slice(way === 'here' ? 2 : 3).map(Number);
if (!(minutes > 0) || !Number.isInteger(seed)) {
  process.stderr.write('usage: npm run soak -- [simulated | browser] [minutes] [seed]\n');
  process.exit(2);
}
/** Megabytes that the page may grow. */
const GROWTH = 10;
const STOP_MS = 50;
/** 60 dB below full scale. */
const SILENT = 0.001;

async function page(): Promise<boolean> {
  const report = await soakPage(minutes, seed);
  process.stdout.write(`${JSON.stringify({ seed, ...report })}\n`);
  const { stretches, rapidStarts } = report;
  const played = stretches.every(
    ({ starts, twice, late, heapGrowthMb, stopMs }) => starts > 0 && twice + late === 0 && heapGrowthMb < GROWTH && stopMs <= STOP_MS,
  );
  return played && rapidStarts.peakAfter < SILENT && rapidStarts.heapGrowthMb < GROWTH;
}

async function simulated(): Promise<boolean> {
  const report: SoakReport & Partial<ChromiumSoak> = way === 'here' ? soakPlayer(minutes, seed) : await soakInChromium(minutes, seed);
  process.stdout.write(`${JSON.stringify({ seed, ...report })}\n`);
  const { onsets, expected, twice, late, misplaced, heapGrowthMb = 0 } = report;
  return Math.abs(onsets - expected) <= 1 && twice + late + misplaced === 0 && heapGrowthMb < GROWTH;
}

process.exitCode = (way === 'browser' ? await page() : await simulated()) ? 0 : 1;
