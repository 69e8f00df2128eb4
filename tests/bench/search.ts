import { cheapestPath } from '../../src/music/harmony/cheapest-path';
import { everyWay, SMALL_LOOPS, searchOf, waysThrough } from '../engine/every-way';
import { medianMs, overFloor, type Results } from './measure';

/** The voicing search against trying every way through the same candidates with the same costs. The floor looks at each cost and each step once. */
export function measureSearch(): Results {
  const searches = SMALL_LOOPS.map(searchOf);
  let same = 0;
  let naiveMs = 0;
  for (const search of searches) {
    const from = performance.now();
    const least = everyWay(search);
    naiveMs += performance.now() - from;
    if (cheapestPath(search).cost === least) same += 1;
  }
  const searchMs = medianMs(() => searches.map(cheapestPath), 60);
  const lookMs = medianMs(() => searches.map(lookOnce), 60);
  return {
    searchCases: searches.length,
    searchSameCost: same,
    searchWaysTried: searches.reduce((sum, search) => sum + waysThrough(search), 0),
    searchNaiveMs: naiveMs,
    searchMs: overFloor(searchMs, lookMs, 'working out every cost and every step of the same loops once'),
    searchNaiveOverOurs: naiveMs / searchMs,
  };
}

/** Every cost and every step, each once: what any exact search must read. */
function lookOnce({ layers, cost, step }: ReturnType<typeof searchOf>): number {
  let sum = 0;
  layers.forEach((layer, index) => {
    const before = layers[(index + layers.length - 1) % layers.length] ?? [];
    for (const shape of layer) {
      sum += cost(shape, index);
      for (const from of before) sum += step(from, shape);
    }
  });
  return sum;
}
