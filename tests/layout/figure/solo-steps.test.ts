import { describe, expect, it } from 'vitest';
import { soloSpans } from '../../../src/layout/figure/solo-steps';
import { arrange } from '../../../src/music/score';
import { chartOf } from '../../engine/progressions';

const bars = (count: number) =>
  arrange(chartOf(`key: D\nclave: 2-3 son\n${'| Em7 | A7 | D6 | % |\n'.repeat(count / 4)}`), { solo: 'example' }).form.bars;

describe('the steps of the solo', () => {
  it('follow each other over the whole form: half, a quarter, a quarter', () => {
    expect(soloSpans(bars(16))).toEqual([
      { step: 1, fromBar: 0, toBar: 8 },
      { step: 2, fromBar: 8, toBar: 12 },
      { step: 3, fromBar: 12, toBar: 16 },
    ]);
  });

  it('begin on whole cycles in a form that does not divide by eight', () => {
    for (const { fromBar } of soloSpans(bars(12))) expect(fromBar % 2).toBe(0);
  });
});
