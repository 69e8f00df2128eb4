import { fuzzCharts } from './fuzz-charts';

/**
 * `npm run fuzz -- [seed] [count]`: reads `count` generated charts (10,000) and ten changed copies of each (100,000), E12.
 * Prints what it saw as JSON; exits 1 if anything threw, hung, or came back different.
 */
const [seed = 1, count = 10_000] = process.argv.slice(2).map(Number);
if (!Number.isInteger(seed) || !Number.isInteger(count) || count < 1) {
  process.stderr.write('usage: npm run fuzz -- [seed] [count]\n');
  process.exit(2);
}
const report = fuzzCharts({ seed, count, mutations: 10 });
process.stdout.write(
  `${JSON.stringify({ seed, ...report, failures: report.failures.slice(0, 10) }, null, 1)}\n${report.failures.length} failed\n`,
);
process.exitCode = report.failures.length > 0 ? 1 : 0;
