import { soakPlayer } from './soak-player';

/** `npm run soak -- [minutes] [seed]`: 60 minutes of simulated time with random live changes. JSON; exits 1 when an onset is lost, doubled, late or misplaced. */
const [minutes = 60, seed = 1] = process.argv.slice(2).map(Number);
if (!(minutes > 0) || !Number.isInteger(seed)) {
  process.stderr.write('usage: npm run soak -- [minutes] [seed]\n');
  process.exit(2);
}
const report = soakPlayer(minutes, seed);
process.stdout.write(`${JSON.stringify({ seed, ...report })}\n`);
const lost = Math.abs(report.onsets - report.expected) > 1;
process.exitCode = lost || report.twice + report.late + report.misplaced > 0 ? 1 : 0;
