import { soakPage } from './soak-page';
import { soakPlayer } from './soak-player';

/**
 * `npm run soak -- [minutes] [seed]`: 60 minutes of simulated time with random live changes. `npm run soak -- browser [minutes] [seed]`: the
 * built page in Chromium, in real time, under four burdens in turn. JSON; exits 1 when an onset is lost, doubled, late or misplaced, or when the page leaks.
 */
const inPage = process.argv[2] === 'browser';
const [minutes = inPage ? 10 : 60, seed = 1] = process.argv.slice(inPage ? 3 : 2).map(Number);
if (!(minutes > 0) || !Number.isInteger(seed)) {
  process.stderr.write('usage: npm run soak -- [browser] [minutes] [seed]\n');
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

function simulated(): boolean {
  const report = soakPlayer(minutes, seed);
  process.stdout.write(`${JSON.stringify({ seed, ...report })}\n`);
  return Math.abs(report.onsets - report.expected) <= 1 && report.twice + report.late + report.misplaced === 0;
}

process.exitCode = (inPage ? await page() : simulated()) ? 0 : 1;
