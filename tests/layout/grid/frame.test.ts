import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread } from '../../../src/layout/grid/contour';
import { frameOf, leastHeight } from '../../../src/layout/grid/frame';
import { fittedLine, typeLine } from '../../../src/layout/grid/type-run';

describe('the frame of a panel', () => {
  it('has its lanes one under the other, without gaps, at any height', () => {
    fc.assert(
      fc.property(fc.boolean(), fc.integer({ min: 0, max: 2000 }), (stacked, height) => {
        const frame = frameOf(stacked, height);
        const lanes = Object.values(frame.lanes);
        const ends = lanes.map((lane) => lane.top + lane.height);
        expect(lanes[0]?.top).toBe(0);
        expect(lanes.slice(1).map((lane) => lane.top)).toEqual(ends.slice(0, -1));
        expect(ends.at(-1)).toBe(frame.height);
        expect(frame.height).toBeGreaterThanOrEqual(leastHeight(stacked));
      }),
    );
  });

  it('keeps the sizes asked for from a metre away: chords 44, notes 26, count 22 on 1280 px', () => {
    // Our own design figures (a panel is 624 units, half of 1280 px less margins); no outside source.
    const { type } = frameOf(false, 0);
    expect(type.chord).toBeGreaterThanOrEqual(44);
    expect(type.note).toBeGreaterThanOrEqual(26);
    expect(type.count).toBeGreaterThanOrEqual(22);
  });
});

describe('type', () => {
  it('cuts accidentals out of a line and puts each piece after the last', () => {
    const line = typeLine('B♭7♯9', 100);
    expect(line.runs.map((run) => run.kind)).toEqual(['text', 'flat', 'text', 'sharp', 'text']);
    expect(line.runs.every((run, at) => at === 0 || run.x > (line.runs[at - 1]?.x ?? 0))).toBe(true);
  });

  it('makes a line smaller until it fits, but not below the least size', () => {
    expect(fittedLine('F♯m7♭5', 44, 1000, 20).size).toBe(44);
    expect(fittedLine('F♯m7♭5', 44, 100, 20).width).toBeCloseTo(100);
    expect(fittedLine('F♯m7♭5', 44, 10, 20).size).toBe(20);
  });
});

describe('beads', () => {
  it('are pushed apart to the gap, in their order, about their mean', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 200 }), { minLength: 1, maxLength: 4 }), (heights) => {
        const placed = spread(heights, 32);
        const sorted = [...placed].sort((one, other) => one - other);
        expect(sorted.slice(1).every((y, at) => y - (sorted[at] ?? 0) >= 32 - 1e-6)).toBe(true);
        const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
        expect(mean(placed)).toBeCloseTo(mean(heights));
        const strictly = heights.every((y, at) => heights.every((other, to) => y >= other || (placed[at] ?? 0) < (placed[to] ?? 0)));
        expect(strictly).toBe(true);
      }),
    );
  });
});
