import assert from 'node:assert/strict';
import fc from 'fast-check';
import { MAX_SOUNDING_BARS } from '../../src/music/chart/limits';
import { readQuickLine } from '../../src/music/chart/quick-line';
import { readChart } from '../../src/music/chart/read';
import { transposeChart } from '../../src/music/chart/transpose-chart';
import { unfold } from '../../src/music/chart/unfold';
import { writeChart } from '../../src/music/chart/write';
import { seeded } from '../../src/practice/seeded';
import { chartText } from '../music/chart/chart-arbitrary';
import { withoutColumns } from '../music/chart/chart-of';
import { HANGING_MS, leastTime } from './fuzz-target';
import { mutate } from './mutate';

/** What a fuzz run saw. */
export interface FuzzReport {
  readonly generated: number;
  readonly mutated: number;
  /** Mutated texts that were still charts. */
  readonly stillCharts: number;
  /** Of processor time, for one text with all that is done with it. */
  readonly slowestMs: number;
  /** How far the memory in use rose above where it stood before, in MB. */
  readonly memoryRiseMegabytes: number;
  readonly failures: readonly { readonly text: string; readonly message: string }[];
}

/**
 * Reads `count` generated charts and `mutations` changed copies of each. A generated chart must be read; a changed one may have faults,
 * each with a place inside the text. What is read must come back the same from its own text, unfold and transpose. Nothing may throw or hang.
 */
export function fuzzCharts({ seed, count, mutations }: { seed: number; count: number; mutations: number }): FuzzReport {
  const random = seeded(seed);
  const failures: { text: string; message: string }[] = [];
  let stillCharts = 0;
  let mutated = 0;
  let slowestMs = 0;
  const before = process.memoryUsage().rss;
  let highest = before;
  const check = (text: string, mustRead: boolean): void => {
    try {
      const { took, answer } = leastTime(() => checkText(text, mustRead));
      if (answer && !mustRead) stillCharts += 1;
      slowestMs = Math.max(slowestMs, took);
      if (took > HANGING_MS) failures.push({ text, message: `took ${took.toFixed(0)} ms` });
    } catch (error) {
      failures.push({ text, message: error instanceof Error ? error.message : String(error) });
    }
  };
  for (let done = 0; done < count; done += 500) {
    highest = Math.max(highest, process.memoryUsage().rss);
    for (const text of fc.sample(chartText, { seed: seed + done, numRuns: Math.min(500, count - done) })) {
      check(text, true);
      check(noise(random), false);
      for (let copy = 0; copy < mutations; copy++) {
        mutated += 1;
        check(mutate(text, random), false);
      }
    }
  }
  return {
    generated: count,
    mutated,
    stillCharts,
    slowestMs: Math.round(slowestMs),
    memoryRiseMegabytes: Math.round((highest - before) / 1e6),
    failures,
  };
}

/** Characters of any kind, or of the chart language alone, in no order. */
function noise(random: () => number): string {
  const language = random() < 0.7;
  const character = (): string =>
    language
      ? ('|:/%><{}()[];,.&~ \n12348xABCDEFGm7b#-+º'[Math.floor(random() * 42)] ?? ' ')
      : String.fromCharCode(Math.floor(random() * 65_536));
  return Array.from({ length: Math.floor(random() * 300) }, character).join('');
}

/** The quick line gives chart text that can be read, or faults, whatever is typed. */
function checkQuickLine(line: string): void {
  const read = readQuickLine(line);
  if (read.ok) assert(readChart(read.value).ok, `the quick line gives a chart with faults: ${read.value}`);
  else assert(read.faults.length > 0, 'a failed reading has faults');
}

/** True when the text is a chart; throws when anything about it is not as it must be. */
function checkText(text: string, mustRead: boolean): boolean {
  checkQuickLine(text.slice(-200).split('\n').at(-1) ?? '');
  const read = readChart(text);
  if (!read.ok) {
    const tooLong = read.faults.every(({ code }) => code === 'too many bars');
    assert(!mustRead || tooLong, `a generated chart has faults: ${JSON.stringify(read.faults)}`);
    const lines = text.split(/\r\n|\n|\r/);
    for (const fault of read.faults) {
      const line = lines[fault.line - 1];
      assert(
        line !== undefined && fault.column >= 1 && fault.column <= line.length + 1,
        `a fault outside the text: ${JSON.stringify(fault)}`,
      );
      assert(
        fault.code === 'too many faults' || line.startsWith(fault.text, fault.column - 1),
        `a fault's text is not what stands there: ${JSON.stringify(fault)}`,
      );
      assert(fault.expected !== '', 'a fault says what was expected');
    }
    assert(read.faults.length > 0, 'a failed reading has faults');
    return false;
  }
  const chart = read.value;
  const again = readChart(writeChart(chart));
  assert(again.ok, `what was written cannot be read: ${JSON.stringify(again)}`);
  assert.deepEqual(withoutColumns(again.value), withoutColumns(chart));
  const form = unfold(chart);
  assert(form.bars.length <= MAX_SOUNDING_BARS, `a form of ${form.bars.length} bars`);
  const moved = readChart(writeChart(transposeChart(chart, 5)));
  assert(moved.ok, `a transposed chart cannot be read: ${JSON.stringify(moved)}`);
  return true;
}
