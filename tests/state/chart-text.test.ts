import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/music/chart/read';
import { NEW_CHART, placeInText, titleOf } from '../../src/state/chart-text';
import { chartFileName } from '../../src/state/file-name';

describe('Chart text as the desk handles it', () => {
  it('begins a new chart with a page that can be played', () => {
    expect(readChart(NEW_CHART)).toMatchObject({ ok: true });
  });

  it('finds a title in sound and in faulty text', () => {
    expect(titleOf('  Title : Low Tide ; late set\n| H7 |')).toBe('Low Tide');
    expect(titleOf('| C |')).toBe('Untitled');
    expect(titleOf('title: <script>alert(1)</script>')).toBe('<script>alert(1)</script>');
  });

  it('finds the place of a line and column, held within the text', () => {
    expect(placeInText('ab\ncde\n', 2, 3)).toBe(5);
    expect(placeInText('ab', 9, 9)).toBe(2);
  });

  it('saves chart text under a name that is safe everywhere', () => {
    expect(chartFileName('Last Ferry')).toBe('last-ferry.chart.txt');
    expect(chartFileName('<script>../../x')).toBe('script-x.chart.txt');
    expect(chartFileName('…')).toBe('chart.chart.txt');
  });
});
