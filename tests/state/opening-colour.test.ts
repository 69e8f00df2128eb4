import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/music/chart/read';
import { settingsForChart } from '../../src/state/reduce';
import { DEFAULT_SETTINGS } from '../../src/state/settings';

describe('a chart that is opened for the first time', () => {
  it.each([
    ['latin jazz', 'jazz'],
    ['salsa', 'plain'],
    ['bolero', 'plain'],
  ] as const)('in the style %s opens in %s colour', (style, colour) => {
    const read = readChart(`style: ${style}\n| Em7 | A7 |`);
    if (!read.ok) throw new Error('the chart is sound');
    expect(settingsForChart(read.value, DEFAULT_SETTINGS).colour).toBe(colour);
  });
});
