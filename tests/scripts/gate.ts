/**
 * `npm test`: one gate, the same here and in CI. Runs its steps in order, stops at the first that fails, and closes with a
 * line `N passed, N failed` over all tests that ran (a failed step that is no test run counts as one failure). The unit tests run with
 * the lowest priority beside the browser tests that wait for music, which leave most of the machine idle.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { constants, setPriority } from 'node:os';
import { join } from 'node:path';

interface Step {
  readonly name: string;
  readonly command: readonly string[];
  readonly environment?: Readonly<Record<string, string>>;
  /** Where the step leaves its counts, if it runs tests. */
  readonly report?: { readonly file: string; readonly count: (report: unknown) => Counts };
}
interface Counts {
  readonly passed: number;
  readonly failed: number;
}

const RESULTS = 'test-results';
const unitReport = join(RESULTS, 'unit.json');

const unitCounts = (report: unknown): Counts => {
  const { numPassedTests, numFailedTests } = report as { numPassedTests: number; numFailedTests: number };
  return { passed: numPassedTests, failed: numFailedTests };
};
const browserCounts = (report: unknown): Counts => {
  const { stats } = report as { stats: { expected: number; unexpected: number; flaky: number } };
  return { passed: stats.expected + stats.flaky, failed: stats.unexpected };
};

/** One half of the browser tests: those that listen to music as it plays run one at a time. */
const browserTests = (project: 'in time' | 'others'): Step => ({
  name: `browser tests, ${project}`,
  command: ['playwright', 'test', '-c', 'tests/browser/playwright.config.ts', '--project', project],
  environment: { BROWSER_TEST_REPORT: `browser-${project.replace(' ', '-')}` },
  report: { file: join(RESULTS, `browser-${project.replace(' ', '-')}.json`), count: browserCounts },
});

const UNIT_TESTS: Step = {
  name: 'unit tests',
  // One worker: the other processor is for the music.
  command: ['vitest', 'run', '--maxWorkers=1', '--reporter=dot', '--reporter=json', `--outputFile.json=${unitReport}`],
  report: { file: unitReport, count: unitCounts },
};

/** In order; the steps of one row run side by side, the first as usual, the others when it leaves the machine idle. */
const STEPS: readonly (readonly [Step, ...Step[]])[] = [
  [{ name: 'format', command: ['biome', 'format', '.'] }],
  [{ name: 'types', command: ['tsc', '--noEmit'] }],
  [{ name: 'types of the pure folders, without the DOM', command: ['tsc', '--noEmit', '-p', 'src/tsconfig.pure.json'] }],
  [{ name: 'lint and import zones', command: ['biome', 'check', '--formatter-enabled=false', '--error-on-warnings', '.'] }],
  [{ name: 'build', command: ['vite', 'build', '--logLevel', 'warn'] }],
  [{ name: 'size of the first screen', command: ['tsx', 'tests/scripts/check-size.ts'] }],
  [browserTests('in time'), UNIT_TESTS],
  [browserTests('others')],
];

/** Runs a step; what one in the background says is shown when it is over. */
async function run(step: Step, background: boolean): Promise<{ readonly ok: boolean; readonly counts: Counts }> {
  const from = performance.now();
  const [program = '', ...args] = step.command;
  const child = spawn(join('node_modules', '.bin', program), args, {
    stdio: background ? ['ignore', 'pipe', 'pipe'] : ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
    env: { ...process.env, ...step.environment },
  });
  if (background && child.pid !== undefined) setPriority(child.pid, constants.priority.PRIORITY_LOW);
  const said: Buffer[] = [];
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (piece: Buffer) => said.push(piece));
  const status = await new Promise<number | null>((resolve) => {
    child.on('error', (error) => {
      console.error(error.message);
      resolve(null);
    });
    child.on('close', resolve);
  });
  process.stdout.write(Buffer.concat(said));
  const found =
    step.report && existsSync(step.report.file)
      ? step.report.count(JSON.parse(readFileSync(step.report.file, 'utf8')))
      : { passed: 0, failed: 0 };
  const ok = status === 0 && (!step.report || found.passed > 0);
  console.log(`── ${step.name}: ${ok ? 'passed' : 'FAILED'} in ${((performance.now() - from) / 1000).toFixed(1)} s`);
  return { ok, counts: ok || found.failed > 0 ? found : { ...found, failed: 1 } };
}

rmSync(RESULTS, { recursive: true, force: true });
mkdirSync(RESULTS, { recursive: true });
let passed = 0;
let failed = 0;
for (const [index, row] of STEPS.entries()) {
  console.log(`\n── ${index + 1} of ${STEPS.length}: ${row.map(({ name }) => name).join(', beside ')}`);
  const results = await Promise.all(row.map((step, place) => run(step, place > 0)));
  for (const { counts } of results) {
    passed += counts.passed;
    failed += counts.failed;
  }
  if (results.some(({ ok }) => !ok)) {
    process.exitCode = 1;
    break;
  }
}
console.log(`\n${passed} passed, ${failed} failed`);
