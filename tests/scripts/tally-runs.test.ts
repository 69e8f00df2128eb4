import { expect, it } from 'vitest';
import { type BrowserReport, tallyRuns } from './tally-runs';

/** As the JSON reporter of Playwright 1.64 writes it: suites by file, those of `describe` inside them; a status for each test. */
const report = (inner: string, outer: string): BrowserReport => ({
  suites: [
    {
      title: 'a.spec.ts',
      specs: [{ title: 'outer', tests: [{ status: outer }] }],
      suites: [{ title: 'In en-GB', specs: [{ title: 'inner', tests: [{ status: inner }] }] }],
    },
  ],
});

it('counts runs and failures of every test by name, the worst first; a test that passed only on being tried again has failed', () => {
  expect(tallyRuns([report('expected', 'expected'), report('unexpected', 'expected'), report('flaky', 'skipped')])).toEqual([
    { name: 'a.spec.ts › In en-GB › inner', runs: 3, failures: 2 },
    { name: 'a.spec.ts › outer', runs: 2, failures: 0 },
  ]);
  expect(tallyRuns([{}])).toEqual([]);
});

it('keeps two tests of one title apart when they stand in groups of their own', () => {
  const group = (title: string, status: string) => ({ title, specs: [{ title: 'at 320 px', tests: [{ status }] }] });
  expect(
    tallyRuns([{ suites: [{ title: 'a.spec.ts', suites: [group('In en-GB', 'expected'), group('In es-CU', 'unexpected')] }] }]),
  ).toEqual([
    { name: 'a.spec.ts › In es-CU › at 320 px', runs: 1, failures: 1 },
    { name: 'a.spec.ts › In en-GB › at 320 px', runs: 1, failures: 0 },
  ]);
});
