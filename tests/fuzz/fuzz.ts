import { fuzzCharts } from './fuzz-charts';
import type { TargetReport } from './fuzz-target';
import { TARGETS } from './targets';

/**
 * `npm run fuzz -- [seed] [count] [target]`: hands every target (or the named one) `count` inputs (100,000). Prints what it saw as JSON,
 * a target at a time; exits 1 if anything threw, hung, or came back different.
 */
const CHARTS = 'charts';
const NAMES = [CHARTS, ...TARGETS.map(({ name }) => name)];
const [seedText = '1', countText = '100000', ...rest] = process.argv.slice(2);
const wanted = rest.join(' ');
const [seed, count] = [Number(seedText), Number(countText)];
if (!Number.isInteger(seed) || !Number.isInteger(count) || count < 1 || (wanted !== '' && !NAMES.includes(wanted))) {
  process.stderr.write(`usage: npm run fuzz -- [seed] [count] [target]\ntargets: ${NAMES.join(', ')}\n`);
  process.exit(2);
}

/** Generated charts, ten changed copies of each: `count` changed copies. */
function charts(): TargetReport & { readonly stillCharts: number } {
  const { failures, slowestMs, memoryRiseMegabytes, mutated, stillCharts, generated } = fuzzCharts({
    seed,
    count: Math.ceil(count / 10),
    mutations: 10,
  });
  return {
    ...{ target: CHARTS, inputs: mutated + 2 * generated, read: generated + stillCharts, stillCharts, slowestMs },
    memoryRiseMegabytes,
    failures: failures.slice(0, 10).map(({ text, message }) => ({ input: text, message })),
  };
}

let failed = 0;
for (const name of NAMES.filter((one) => wanted === '' || one === wanted)) {
  const from = performance.now();
  const report = TARGETS.find((one) => one.name === name)?.run({ seed, count }) ?? charts();
  failed += report.failures.length;
  process.stdout.write(`${JSON.stringify({ seed, ...report, seconds: Math.round((performance.now() - from) / 1000) })}\n`);
}
process.stdout.write(`${failed} failed\n`);
process.exitCode = failed > 0 ? 1 : 0;
