/**
 * `npm run check:flaky -- [times] [what]`: runs the browser tests (or those whose file name holds `what`) so many times, 20 unless told, as the gate
 * runs them. Prints one JSON object: runs, tests, and every test that failed, with how often. Exits 1 when one did, 2 on bad use.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type BrowserReport, tallyRuns } from './tally-runs';

const [timesText = '20', ...what] = process.argv.slice(2);
const times = Number(timesText);
if (!Number.isInteger(times) || times < 1) {
  process.stderr.write('usage: npm run check:flaky -- [times] [what]\n');
  process.exit(2);
}

const reports: BrowserReport[] = [];
for (let run = 1; run <= times; run += 1)
  for (const project of ['in time', 'others']) {
    const name = `flaky-${run}-${project.replace(' ', '-')}`;
    const from = performance.now();
    const args = ['test', '-c', 'tests/browser/playwright.config.ts', '--project', project, '--pass-with-no-tests', ...what];
    const { status } = spawnSync(join('node_modules', '.bin', 'playwright'), args, {
      stdio: ['ignore', 'ignore', 'inherit'],
      shell: process.platform === 'win32',
      env: { ...process.env, BROWSER_TEST_REPORT: name },
    });
    const file = join('test-results', `${name}.json`);
    if (!existsSync(file)) throw new Error(`the browser tests left no report, exit code ${status}`);
    reports.push(JSON.parse(readFileSync(file, 'utf8')) as BrowserReport);
    process.stderr.write(`run ${run} of ${times}, ${project}: exit code ${status}, ${Math.round((performance.now() - from) / 1000)} s\n`);
  }

const tallies = tallyRuns(reports);
const failed = tallies.filter(({ failures }) => failures > 0);
console.log(JSON.stringify({ runs: times, tests: tallies.length, failed }, null, 2));
process.exitCode = failed.length > 0 || tallies.length === 0 ? 1 : 0;
