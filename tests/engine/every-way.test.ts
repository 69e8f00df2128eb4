import { expect, test } from 'vitest';
import { cheapestPath } from '../../src/music/harmony/cheapest-path';
import { everyWay, SMALL_LOOPS, searchOf, waysThrough } from './every-way';

test('the voicing search finds what trying every way finds, on small loops of each level and direction', () => {
  let ways = 0;
  for (const loop of SMALL_LOOPS) {
    const search = searchOf(loop);
    ways += waysThrough(search);
    expect(cheapestPath(search).cost, JSON.stringify(loop)).toBe(everyWay(search));
  }
  expect(ways).toBeGreaterThan(1_000_000);
});
