/** The halving behind every look into a sorted list, against looking at one item after another. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { countLeading } from '../../../src/vocabulary';

it('counts the items before the first that fails, as looking at each does', () => {
  const ticks = fc.array(fc.integer({ min: 0, max: 40 })).map((found) => found.sort((a, b) => a - b));
  fc.assert(
    fc.property(ticks, fc.integer({ min: -1, max: 41 }), (sorted, limit) => {
      const first = sorted.findIndex((tick) => tick > limit);
      expect(countLeading(sorted, (tick) => tick <= limit)).toBe(first === -1 ? sorted.length : first);
    }),
  );
});
