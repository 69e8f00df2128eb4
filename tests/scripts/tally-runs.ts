/** As much of a report of Playwright's JSON reporter as is counted here. */
export interface BrowserReport {
  readonly suites?: readonly ReportSuite[];
}
interface ReportSuite {
  /** Of the outermost suite the name of its file, of those inside it what `describe` was given. */
  readonly title: string;
  readonly suites?: readonly ReportSuite[];
  readonly specs?: readonly { readonly title: string; readonly tests: readonly { readonly status: string }[] }[];
}

/** One test over all runs, named by its file, the groups it stands in and its title. */
export interface TestTally {
  readonly name: string;
  readonly runs: number;
  readonly failures: number;
}

/** Counts how often each test ran and failed over several reports; skipped ones did not run. Most failures first, then by name. */
export function tallyRuns(reports: readonly BrowserReport[]): readonly TestTally[] {
  const tallies = new Map<string, { runs: number; failures: number }>();
  const count = (suite: ReportSuite, groups: readonly string[]): void => {
    const place = [...groups, suite.title];
    for (const { title, tests } of suite.specs ?? [])
      for (const { status } of tests) {
        if (status === 'skipped') continue;
        const name = [...place, title].join(' › ');
        const tally = tallies.get(name) ?? { runs: 0, failures: 0 };
        tallies.set(name, { runs: tally.runs + 1, failures: tally.failures + (status === 'expected' ? 0 : 1) });
      }
    for (const inner of suite.suites ?? []) count(inner, place);
  };
  for (const { suites = [] } of reports) for (const suite of suites) count(suite, []);
  return [...tallies].map(([name, tally]) => ({ name, ...tally })).sort((a, b) => b.failures - a.failures || (a.name < b.name ? -1 : 1));
}
