import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CLAVES,
  claveSteps,
  cycleSteps,
  exchangeSides,
  gridOfSteps,
  gridText,
  rotate,
  sideAtStep,
  stepsOfGrid,
  strokeName,
} from '../../../src/music/clave/patterns';
import { readGrid } from '../../../src/music/clave/read-grid';
import { type Clave, type Direction, oppositeDirection } from '../../../src/vocabulary';

const grid = (clave: Clave): string => gridText(gridOfSteps(claveSteps(clave), cycleSteps(clave.kind)));
const kinds = ['son', 'rumba', 'bembe'] as const;
const directions: readonly Direction[] = ['2-3', '3-2'];

/** Typed from the sources, apart from the application's own table. */
const PUBLISHED = [
  // R. Santos, "Patrones de songo y salsa" (2009), position lists; 3-2 also in Toussaint, "The Rhythm that Conquered the World".
  { clave: { kind: 'son', direction: '3-2' }, grid: 'x..x..x. ..x.x...' },
  { clave: { kind: 'son', direction: '2-3' }, grid: '..x.x... x..x..x.' },
  // R. Santos (2009); Drum Dojo, "Rumba Clave".
  { clave: { kind: 'rumba', direction: '3-2' }, grid: 'x..x...x ..x.x...' },
  { clave: { kind: 'rumba', direction: '2-3' }, grid: '..x.x... x..x...x' },
  // Timbales pattern sheet, 6/8 bell.
  { clave: { kind: 'bembe', direction: '3-2' }, grid: 'x.x.xx .x.x.x' },
  { clave: { kind: 'bembe', direction: '2-3' }, grid: '.x.x.x x.x.xx' },
] as const;

describe('the clave table', () => {
  it.each(PUBLISHED)('holds the published grid of $clave.kind $clave.direction: $grid', (row) => {
    expect(grid(row.clave)).toBe(row.grid);
  });

  it('has rows that ascend, lie inside their cycle and name five sounding strokes', () => {
    for (const kind of kinds) {
      const row = CLAVES[kind];
      expect(row.kind).toBe(kind);
      for (const steps of [row.threeTwo, row.named]) {
        expect([...new Set(steps)].sort((a, b) => a - b)).toEqual(steps);
        expect(steps.every((step) => step >= 0 && step < row.cycle)).toBe(true);
      }
      expect(row.named).toHaveLength(5);
      expect(row.named.every((step) => row.threeTwo.includes(step))).toBe(true);
    }
  });

  it('differs between son and rumba in one stroke by one step (Toussaint 2002, swap distance 1)', () => {
    const moved = CLAVES.son.threeTwo.map((step, index) => (CLAVES.rumba.threeTwo[index] ?? 99) - step);
    expect(moved).toEqual([0, 0, 1, 0, 0]);
  });

  it.each([
    // Toussaint, The Geometry of Musical Rhythm (2013), ch. 8: pairs of strokes 1 to 8 steps apart round the cycle.
    { kind: 'son', vector: [0, 1, 2, 2, 0, 3, 2, 0] },
    { kind: 'rumba', vector: [0, 1, 2, 2, 1, 1, 3, 0] },
  ] as const)('has the interval vector of $kind', ({ kind, vector }) => {
    const steps = CLAVES[kind].threeTwo;
    const counts = Array.from({ length: 8 }, () => 0);
    for (const [index, first] of steps.entries()) {
      for (const second of steps.slice(index + 1)) {
        const arc = Math.min(second - first, 16 - second + first);
        counts[arc - 1] = (counts[arc - 1] ?? 0) + 1;
      }
    }
    expect(counts).toEqual(vector);
  });
});

describe('sides and strokes', () => {
  it('names bombo the second and ponche the third stroke in both directions', () => {
    expect([11, 14].map((step) => strokeName('son', '2-3', step))).toEqual(['second', 'third']);
    expect([3, 6].map((step) => strokeName('son', '3-2', step))).toEqual(['second', 'third']);
    expect(strokeName('rumba', '2-3', 15)).toBe('third');
    expect(strokeName('rumba', '3-2', 7)).toBe('third');
    expect(strokeName('rumba', '3-2', 6)).toBeNull();
  });

  it('counts the strokes from the 3-side: the 2-side holds the fourth and fifth', () => {
    for (const kind of kinds) {
      for (const direction of directions) {
        const names = claveSteps({ kind, direction }).map((step) => [
          sideAtStep({ kind, direction }, step),
          strokeName(kind, direction, step),
        ]);
        expect(names.filter(([side, name]) => side === 3 && name !== null).map(([, name]) => name)).toEqual(['first', 'second', 'third']);
        expect(names.filter(([side, name]) => side === 2 && name !== null).map(([, name]) => name)).toEqual(['fourth', 'fifth']);
      }
    }
  });

  it('gives the first half of the cycle to the side the direction names first', () => {
    expect(sideAtStep({ kind: 'son', direction: '2-3' }, 7)).toBe(2);
    expect(sideAtStep({ kind: 'son', direction: '2-3' }, 8)).toBe(3);
    expect(sideAtStep({ kind: 'son', direction: '3-2' }, 16)).toBe(3);
    expect(sideAtStep({ kind: 'bembe', direction: '3-2' }, 6)).toBe(2);
    expect(sideAtStep({ kind: 'son', direction: '2-3' }, -1)).toBe(3);
  });
});

describe('turning grids', () => {
  it('comes back after exchanging the sides twice, and after turning there and back', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 16, maxLength: 16 }), fc.integer({ min: -40, max: 40 }), (cells, by) => {
        const steps = stepsOfGrid(cells);
        expect(exchangeSides(exchangeSides(steps, 16), 16)).toEqual(steps);
        expect(gridOfSteps(exchangeSides(steps, 16), 16)).toEqual(rotate(cells, 8));
        expect(rotate(rotate(cells, by), -by)).toEqual(cells);
        expect(gridOfSteps(steps, 16)).toEqual(cells);
      }),
    );
    expect(rotate([], 3)).toEqual([]);
    expect(oppositeDirection('2-3')).toBe('3-2');
  });

  it('throws on a step outside the cycle', () => {
    expect(() => gridOfSteps([16], 16)).toThrow('0 to 15, got 16');
  });
});

describe('reading a typed grid', () => {
  it('reads back what gridText writes, spaces and bars ignored', () => {
    fc.assert(
      fc.property(fc.constantFrom(16, 12), fc.array(fc.boolean(), { minLength: 16, maxLength: 16 }), (cycle, cells) => {
        const cut = cells.slice(0, cycle);
        expect(readGrid(`| ${gridText(cut).replace(' ', ' | ')} |`)).toEqual({ ok: true, value: cut });
      }),
    );
  });

  it.each([
    { text: '..x.x... x..x..', found: 14 },
    { text: '', found: 0 },
    { text: 'x.x.x.x.x.x.x.x.x', found: 17 },
  ])('says how many steps were found in "$text"', ({ text, found }) => {
    const read = readGrid(text);
    expect(read.ok ? [] : read.faults).toMatchObject([
      { code: 'grid length', column: 1, text, expected: expect.stringContaining(`found ${found}`) },
    ]);
  });

  it('points at every symbol that is neither stroke nor rest', () => {
    const read = readGrid('..x.o... x..x..?.');
    expect(read.ok ? [] : read.faults.map((fault) => [fault.code, fault.column, fault.text])).toEqual([
      ['grid symbol', 5, 'o'],
      ['grid symbol', 16, '?'],
    ]);
  });
});
