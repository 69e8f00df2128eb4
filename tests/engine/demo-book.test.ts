import { describe, expect, it } from 'vitest';
import { DEMO_BOOK } from '../../src/music/chart/demo-book';
import { arrange } from '../../src/music/score';
import { CHECKS } from './checks';
import { chartOf } from './progressions';

describe('the demo book', () => {
  it.each(DEMO_BOOK.map((demo) => [demo.title, demo.text] as const))(
    '%s keeps every rule at all levels, in both directions and colours',
    (_, text) => {
      const faults: string[] = [];
      for (const level of [1, 2, 3, 4] as const)
        for (const direction of ['2-3', '3-2'] as const)
          for (const colour of ['plain', 'jazz'] as const)
            for (const closed of [true, false]) {
              const score = arrange(chartOf(text), { level, direction, colour, closed });
              faults.push(...CHECKS.flatMap((check) => check(score)));
            }
      expect([...new Set(faults)].slice(0, 20)).toEqual([]);
    },
  );
});
