import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unfold } from '../../../src/music/chart/unfold';
import { writeChart } from '../../../src/music/chart/write';
import { chartText } from './chart-arbitrary';
import { chartOf, withoutColumns } from './chart-of';

describe('E12: reading what was written', () => {
  it('gives the same chart, lines and comments included, for 1,000 generated charts', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(chartText, (text) => {
        const chart = chartOf(text);
        const written = writeChart(chart);
        const again = chartOf(written);
        expect(withoutColumns(again)).toEqual(withoutColumns(chart));
        expect(writeChart(again)).toBe(written);
      }),
      { numRuns: 1000, seed: 12 },
    );
  });

  it('unfolds to the same bars, and leaves the chart as it was', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(chartText, (text) => {
        const chart = chartOf(text);
        const before = JSON.stringify(chart);
        const form = unfold(chart, { loops: true });
        expect(unfold(chartOf(writeChart(chart)), { loops: true })).toEqual(form);
        expect(JSON.stringify(chart)).toBe(before);
      }),
      { numRuns: 200, seed: 12 },
    );
  });
});
