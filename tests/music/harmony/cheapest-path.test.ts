import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cheapestPath } from '../../../src/music/harmony/cheapest-path';

/** The least cost over every possible way, by trying them all. */
function exhaustive(
  layers: readonly (readonly number[])[],
  cost: (value: number) => number,
  step: (from: number, to: number) => number,
  closed: boolean,
): number {
  let best = Number.POSITIVE_INFINITY;
  const walk = (index: number, way: readonly number[], sum: number): void => {
    if (index === layers.length) {
      const total = closed ? sum + step(way.at(-1) ?? 0, way[0] ?? 0) : sum;
      if (total < best) best = total;
      return;
    }
    for (const value of layers[index] ?? [])
      walk(index + 1, [...way, value], sum + cost(value) + (index > 0 ? step(way[index - 1] ?? 0, value) : 0));
  };
  walk(0, [], 0);
  return best;
}

describe('cheapestPath', () => {
  it('finds the same cost as trying every way, open and closed', () => {
    const layer = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(
        fc.array(layer, { minLength: 1, maxLength: 5 }),
        fc.boolean(),
        fc.integer({ min: 1, max: 97 }),
        (layers, closed, salt) => {
          const cost = (value: number) => (value * salt) % 23;
          const step = (from: number, to: number) => (Math.abs(from - to) * salt + to) % 31;
          const found = cheapestPath({ layers, cost, step, closed });
          const way = found.choice.map((index, at) => layers[at]?.[index] ?? 0);
          let sum = way.reduce((total, value, at) => total + cost(value) + (at > 0 ? step(way[at - 1] ?? 0, value) : 0), 0);
          if (closed) sum += step(way.at(-1) ?? 0, way[0] ?? 0);
          expect(found.cost).toBe(exhaustive(layers, cost, step, closed));
          expect(sum).toBe(found.cost);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('refuses a layer without candidates', () => {
    expect(() => cheapestPath({ layers: [[1], []], cost: () => 0, step: () => 0, closed: false })).toThrow('layer 1 has no candidate');
  });

  it('goes nowhere through no layers', () => {
    expect(cheapestPath({ layers: [], cost: () => 0, step: () => 0, closed: true })).toEqual({ choice: [], cost: 0 });
  });
});
