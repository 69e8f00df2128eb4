import { describe, expect, it } from 'vitest';
import { type ArrangeOptions, arrange } from '../../src/music/score';
import type { Device, Level } from '../../src/vocabulary';
import { bassLeaps, CHECKS, checkLeads, guideMoves } from './checks';
import { chartOf, RECIPES, randomProgression } from './progressions';

const LEVELS: readonly Level[] = [1, 2, 3, 4, 5, 6];
const recipe = (index: number) => {
  const row = RECIPES[index];
  if (!row) throw new Error('no such recipe');
  return chartOf(`title: ${row.name}\nkey: ${row.key}\n${row.bars}`);
};

describe('figures that hold for every score (E2, E3, E5, E8, E9, E10)', () => {
  it.each(RECIPES.map((row, index) => [row.name, index] as const))(
    '%s: all levels, both directions, son and rumba, plain and jazz',
    (_, index) => {
      const faults: string[] = [];
      for (const level of LEVELS)
        for (const direction of ['2-3', '3-2'] as const)
          for (const kind of ['son', 'rumba'] as const)
            for (const colour of ['plain', 'jazz'] as const) {
              const score = arrange(recipe(index), { level, direction, kind, colour });
              faults.push(...CHECKS.flatMap((check) => check(score)));
            }
      expect(faults).toEqual([]);
    },
  );

  it('200 random progressions at every level', () => {
    const faults: string[] = [];
    for (let seed = 1; seed <= 200; seed++) {
      const chart = chartOf(randomProgression(seed));
      const level = LEVELS[seed % 6] ?? 2;
      const options: ArrangeOptions = {
        level,
        direction: seed % 2 ? '2-3' : '3-2',
        kind: seed % 3 ? 'son' : 'rumba',
        colour: seed % 5 ? 'plain' : 'jazz',
      };
      const score = arrange(chart, options);
      faults.push(...CHECKS.flatMap((check) => check(score)));
    }
    expect(faults.slice(0, 20)).toEqual([]);
  });

  it('the variants that “another one” gives keep every rule', () => {
    const faults: string[] = [];
    for (const [index] of RECIPES.entries())
      for (let seed = 1; seed <= 4; seed++)
        for (const level of LEVELS) faults.push(...CHECKS.flatMap((check) => check(arrange(recipe(index), { level, seed }))));
    expect(faults.slice(0, 20)).toEqual([]);
  });

  it('devices keep the figure uncrossed and the anticipations where they are', () => {
    const faults: string[] = [];
    for (const [index] of RECIPES.entries())
      for (const device of [
        'octave-up',
        'octaves-only',
        'one-bar-neutral',
        'extra-note',
        'double-notes',
        'half-step-out',
      ] as const satisfies readonly Device[])
        for (const level of LEVELS)
          for (const direction of ['2-3', '3-2'] as const) {
            const score = arrange(recipe(index), { level, direction, devices: [device] });
            if (score.alignment.verdict === 'crossed') faults.push(`E8 ${score.title} ${device} level ${level}`);
            faults.push(...checkLeads(score));
          }
    expect(faults.slice(0, 20)).toEqual([]);
  });
});

describe('E4: the octave line of guide figures', () => {
  it('over 1,000 random progressions moves at most 5 semitones, 95 % at most 2, 0.8 on average', () => {
    const moves: number[] = [];
    for (let seed = 1; seed <= 1000; seed++)
      moves.push(...guideMoves(arrange(chartOf(randomProgression(seed)), { level: LEVELS[1 + (seed % 4)] ?? 2 })));
    const mean = moves.reduce((sum, move) => sum + move, 0) / moves.length;
    const small = moves.filter((move) => move <= 2).length / moves.length;
    expect(moves.length).toBeGreaterThan(10_000);
    expect(Math.max(...new Set(moves))).toBeLessThanOrEqual(5);
    expect(small).toBeGreaterThanOrEqual(0.95);
    expect(mean).toBeLessThanOrEqual(0.8);
  });
});

describe('E9: bass leaps', () => {
  it('95 % of leaps are at most a fifth and none is over an octave, over 300 random progressions', () => {
    const leaps: number[] = [];
    for (let seed = 1; seed <= 300; seed++) leaps.push(...bassLeaps(arrange(chartOf(randomProgression(seed)))));
    expect(Math.max(...new Set(leaps))).toBeLessThanOrEqual(12);
    expect(leaps.filter((leap) => leap <= 7).length / leaps.length).toBeGreaterThanOrEqual(0.95);
  });
});
