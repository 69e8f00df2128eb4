import { describe, expect, test } from 'vitest';
import type { ArrangeOptions } from '../../src/music/arrange-options';
import { matchTake } from '../../src/practice/match';
import { CHARTS, emptyTake, played } from './synthetic';

const CYCLE = 3840;
/** Patterns of which every rotation by beats differs from the pattern and from its other accepted ending. */
const PATTERNS: readonly ArrangeOptions[] = [
  {},
  { level: 1 },
  { level: 4 },
  { level: 6 },
  { kind: 'rumba' },
  { cells: { two: 'A4', three: 'B2' } },
];

/** Share of takes of two cycles whose displacement is recognised as exactly that. */
function recognised(steps: readonly number[], noise: { readonly missed: number; readonly extra: number; readonly spread: number }) {
  let found = 0;
  let of = 0;
  for (const text of Object.values(CHARTS))
    for (const options of PATTERNS)
      for (const displacedSteps of steps)
        for (const direction of ['2-3', '3-2'] as const)
          for (const pitched of [true, false]) {
            of += 1;
            const empty = emptyTake(text, { tempo: 60 + (of % 3) * 25, pitched, options: { ...options, direction } });
            const { take } = played({ ...empty, toPlayTick: 2 * CYCLE }, { seed: of, offsetMs: 20, displacedSteps, ...noise });
            const { stretches } = matchTake(take);
            if (stretches.length === 1 && stretches[0]?.displacedSteps === displacedSteps) found += 1;
          }
  return { found, of };
}

describe('a pattern in the wrong place is one mistake', () => {
  test('moved by a side, a beat or a half bar: recognised within two cycles, always', () => {
    for (const spread of [0.1, 0.18]) {
      const { found, of } = recognised([-6, -4, -2, 2, 4, 6, 8], { missed: 0, extra: 0, spread });
      console.log(`displaced, spread ${100 * spread} %: ${found} of ${of} recognised within two cycles`);
      if (spread === 0.1) expect(found).toBe(of);
      else expect(found / of).toBeGreaterThanOrEqual(0.99);
    }
  });

  test('even with strokes missed and added', () => {
    const { found, of } = recognised([-4, -2, 2, 4, 8], { missed: 0.05, extra: 0.05, spread: 0.1 });
    console.log(`displaced, 5 % missed and 5 % extra: ${found} of ${of} recognised within two cycles`);
    expect(found / of).toBeGreaterThanOrEqual(0.97);
  });

  test('and never said of a take in its place, nor of a pattern whose bars are equal', () => {
    let seed = 0;
    for (const options of [...PATTERNS, { devices: ['one-bar-neutral' as const] }])
      for (const tempo of [40, 90, 140]) {
        seed += 1;
        const { take } = played(emptyTake(CHARTS.minor, { tempo, options }), { seed, spread: 0.15, missed: 0.1, extra: 0.1, offsetMs: 40 });
        expect(matchTake(take).stretches.filter(({ displacedSteps }) => displacedSteps !== 0)).toEqual([]);
      }
  });

  test('in 6/8 the other side is six steps away', () => {
    const text = 'title: Bell Buoy\nkey: Em\nmeter: 6/8\nclave: 2-3\ntempo: half = 80\nstyle: bembe\n\n[A]\n| Em | Em | Am | B7 |\n';
    for (const parts of [['piano right', 'piano left'], ['clave']] as const) {
      const empty = emptyTake(text, { passes: 2, parts, pitched: parts.length === 2 });
      const { take } = played(empty, { seed: 4, spread: 0.1, displacedSteps: 6 });
      expect(matchTake(take).stretches.map(({ displacedSteps, crossed }) => [displacedSteps, crossed])).toEqual([[6, true]]);
      const own = matchTake(played(empty, { seed: 5, spread: 0.05 }).take);
      expect(new Set(own.strokes.map(({ label }) => label))).toEqual(new Set(['right']));
      expect(own.claveHeard).toBeNull();
    }
  });

  test('a side that is lost on the way is found where it was lost', () => {
    const empty = emptyTake(CHARTS.minor, { passes: 2 });
    const first = played({ ...empty, toPlayTick: 6 * CYCLE }, { seed: 1, spread: 0.1 }).take.notes;
    const then = played({ ...empty, fromPlayTick: 6 * CYCLE }, { seed: 2, spread: 0.1, displacedSteps: 8 }).take.notes;
    const { stretches } = matchTake({ ...empty, notes: [...first, ...then] });
    expect(stretches.map(({ displacedSteps, fromPlayTick }) => [displacedSteps, fromPlayTick / CYCLE])).toEqual([
      [0, 0],
      [8, 6],
    ]);
    expect(stretches[1]?.crossed).toBe(true);
  });

  test('rumba clave clapped for son, and son for rumba, are recognised within two cycles, crossed or not', () => {
    let of = 0;
    for (const text of Object.values(CHARTS))
      for (const kind of ['son', 'rumba'] as const)
        for (const direction of ['2-3', '3-2'] as const)
          for (const displacedSteps of [0, 8])
            for (const tempo of [60, 90, 130]) {
              of += 1;
              const other = kind === 'son' ? 'rumba' : 'son';
              const make = (clave: typeof kind) =>
                emptyTake(text, { tempo, parts: ['clave'], pitched: false, options: { kind: clave, direction } });
              const { take } = played({ ...make(other), toPlayTick: 2 * CYCLE }, { seed: of, spread: 0.1, offsetMs: 15, displacedSteps });
              const { music, score } = make(kind);
              const matched = matchTake({ ...take, music, score });
              expect(matched.claveHeard).toBe(other);
              expect(matched.stretches.map((stretch) => stretch.displacedSteps)).toEqual([displacedSteps]);
              expect(matched.strokes.filter(({ label }) => label === 'missed' || label === 'extra')).toEqual([]);
            }
    console.log(`the other clave: ${of} of ${of} recognised within two cycles`);
  });
});
