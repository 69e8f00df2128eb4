import { describe, expect, it } from 'vitest';
import { notate } from '../../../src/layout/notation/notate';
import type { NotatedBar, Notation } from '../../../src/layout/notation/notation';
import { systemBreaks } from '../../../src/layout/notation/systems';
import { barContent } from '../../../src/layout/sheet/bar-content';
import { foldRepeats } from '../../../src/layout/sheet/repeats';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';
import { readChart } from '../../../src/music/chart/read';
import { arrange, type Score } from '../../../src/music/score';

const scoreOf = (text: string, level: 1 | 2 | 3 = 2): Score => {
  const chart = readChart(text);
  if (!chart.ok) throw new Error(JSON.stringify(chart.faults));
  return arrange(chart.value, { level });
};
const folded = (text: string) => {
  const score = scoreOf(text);
  return foldRepeats(notate(score), score.bars);
};
const shown = (notation: Notation): string =>
  notation.bars
    .map(
      (b) =>
        `${b.repeat.start ? '|:' : ''}${b.ending ? `(${b.ending.passes.join('.')})` : ''}${b.index}${b.repeat.end ? `:|${b.repeat.end}` : ''}`,
    )
    .join(' ');

/** Plays folded bars as a reader of repeats and endings would (common practice), independently of how they were folded. */
function playedOut(bars: readonly NotatedBar[]): NotatedBar[] {
  const played: NotatedBar[] = [];
  let start = 0;
  let pass = 1;
  for (let i = 0; i < bars.length; ) {
    const bar = bars[i] as NotatedBar;
    if (bar.repeat.start && start !== i) {
      start = i;
      pass = 1;
    }
    if (bar.ending && !bar.ending.passes.includes(pass)) {
      i++;
      continue;
    }
    played.push(bar);
    const again = bar.repeat.end !== null && (bar.ending ? bar.ending.passes.includes(pass) : pass < bar.repeat.end);
    if (again) pass++;
    i = again ? start : i + 1;
  }
  return played;
}

describe('foldRepeats', () => {
  it('folds a repeated passage whose passes are alike, and says how often it is played', () => {
    expect(shown(folded('title: R\nkey: C\nclave: 2-3 son\n\n[A]\n| C | F | G7 | F ||\n\n[Coro, x4]\n| C F | G7 F |\n'))).toMatch(
      /\|:4 5:\|[34]/,
    );
  });
  it('writes passes out that differ in side: an odd passage comes back on the other side', () => {
    const odd = folded('title: R\nkey: C\nclave: 2-3 son\n\n[A]\n|: C | F | G7 :|\n\n[B]\n| C | F | C | F ||\n');
    expect(odd.bars.every((bar) => !bar.repeat.start && bar.repeat.end === null)).toBe(true);
  });
  it('gives what differs at the end of the passes to endings', () => {
    const text =
      'title: R\nkey: C\nclave: 2-3 son\n\n[A]\n|: C | Am7 | Dm7 | G7 | C | Am7 |1. Dm7 | G7 :|2. G7 | C ||\n\n[B]\n| F | G7 | C | C ||\n';
    const notation = folded(text);
    expect(shown(notation)).toMatch(/^\|:0 .*\(1\)\d+.*:\|2 \(2\)/);
    const brackets = notation.bars.flatMap((bar) => (bar.ending ? [[bar.ending.opens, bar.ending.closes, bar.ending.last]] : []));
    expect(brackets.at(0)?.[0], 'opens').toBe(true);
    expect(brackets.at(-1), 'the last bracket stays open').toEqual([brackets.length === 2, false, true]);
  });
  it.each(DEMO_BOOK.flatMap((demo) => ([1, 2, 3] as const).map((level) => [demo.title, level, demo.text] as const)))(
    '%s, level %i: played out, the repeats give every bar of the form again',
    (_, level, text) => {
      const score = scoreOf(text, level);
      const whole = notate(score);
      const notation = foldRepeats(whole, score.bars);
      expect(playedOut(notation.bars).map(barContent)).toEqual(whole.bars.map(barContent));
    },
  );
  it('ends with D.C. when the form goes round and has repeat signs inside, else with repeat signs about the whole', () => {
    const inside = folded(
      'title: R\nkey: C\nclave: 2-3 son\n\n[A]\n| C | F | G7 | F ||\n\n[Coro, x4]\n| C F | G7 F |\n\n[End]\n| C | C ||\n',
    );
    expect(inside.ends).toBe('da capo');
    expect(folded('title: R\nkey: C\nclave: 2-3 son\n\n[A]\n| C | F | G7 | F ||\n').ends).toBe('repeat');
  });
  it('puts an ending of one bar behind the line before it', () => {
    const bars = [null, null, null, { passes: [1] }, { passes: [2] }].map((ending, i) => ({
      sectionStart: i === 0 ? 'A' : null,
      ending: ending && { ...ending, opens: true, closes: false, last: true },
    }));
    expect(systemBreaks(bars, 4)).toEqual([{ from: 0, to: 5 }]);
  });
});
