import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { transposeChart } from '../../../src/music/chart/transpose-chart';
import { unfold } from '../../../src/music/chart/unfold';
import { writeChart } from '../../../src/music/chart/write';
import { chartText } from './chart-arbitrary';
import { chartOf, withoutColumns } from './chart-of';

describe('transposing a chart', () => {
  it('respells keys and symbols for the new key and leaves everything else', () => {
    const text = 'title: x\nkey: D ; the singer\n[A, key: Bm]\n|: Em7 A7/C# | D6 / >B7b9 / {1~} | N.C. :| x3\n[B]\n| % | stop ||\n';
    expect(writeChart(transposeChart(chartOf(text), 3))).toBe(
      'title: x\nkey: F ; the singer\n[A, key: Dm]\n|: Gm7 C7/E | F6 / >D7b9 / {1~} | N.C. :| x3\n[B]\n| % | stop ||\n',
    );
    expect(writeChart(transposeChart(chartOf(text), -2))).toContain('|: Dm7 G7/B | C6 / >A7b9 / {1~} | N.C. :| x3');
  });

  it('writes the key even when the chart had no line for it', () => {
    expect(writeChart(transposeChart(chartOf('| C | G7 |'), 1))).toBe('key: Db\n| Db | Ab7 |\n');
  });

  it('is itself after whole octaves', () => {
    const chart = chartOf('| C | G7 |');
    expect(transposeChart(chart, 12)).toBe(chart);
  });

  it('moves the root of every sounding chord by the semitones, and is the same chart when written and read', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(chartText, fc.integer({ min: -11, max: 11 }), (text, semitones) => {
        const chart = chartOf(text);
        const moved = transposeChart(chart, semitones);
        const roots = (form: ReturnType<typeof unfold>) =>
          form.bars.map((bar) =>
            bar.chords.map(({ chord, tick }) => [tick, chord?.rootPc ?? null, chord?.tones.map(({ degree }) => degree).join() ?? null]),
          );
        const expected = roots(unfold(chart)).map((bar) =>
          bar.map(([tick, pc, tones]) => [tick, typeof pc === 'number' ? (((pc + semitones) % 12) + 12) % 12 : null, tones]),
        );
        expect(roots(unfold(moved))).toEqual(expected);
        const again = chartOf(writeChart(moved));
        expect(unfold(again).bars.map(({ chords }) => chords)).toEqual(unfold(moved).bars.map(({ chords }) => chords));
        if (chart.headers.some(({ name }) => name === 'key')) expect(withoutColumns(again)).toEqual(withoutColumns(moved));
      }),
      { numRuns: 150, seed: 7 },
    );
  });
});
