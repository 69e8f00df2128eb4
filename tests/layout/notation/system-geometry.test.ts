import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notate } from '../../../src/layout/notation/notate';
import { STAVES } from '../../../src/layout/notation/notation';
import { signGaps } from '../../../src/layout/notation/sign-gaps';
import { barAtX, headX, systemGeometry } from '../../../src/layout/notation/system-geometry';
import { STAFF_HEIGHT } from '../../../src/layout/notation/system-heights';
import { systemBreaks } from '../../../src/layout/notation/systems';
import { LOOP_SCORE } from '../loop-score';

const notation = notate(LOOP_SCORE);
const geometry = systemGeometry({ notation, from: 0, to: 4, width: 1100, perSystem: 4, staves: STAVES });

describe('systemGeometry', () => {
  it('fills the width with bars that touch', () => {
    expect(
      geometry.bars.map((bar, i) => bar.x + bar.width - (geometry.bars[i + 1]?.x ?? geometry.right)).every((gap) => Math.abs(gap) < 1e-9),
    ).toBe(true);
    expect(geometry.right).toBeLessThanOrEqual(1100);
    expect(geometry.right).toBeGreaterThan(1095);
  });

  it('spaces all steps of a bar evenly, and bars of one length alike', () => {
    const steps = Array.from({ length: 7 }, (_, i) => headX(geometry, (i + 1) * 240) - headX(geometry, i * 240));
    expect(Math.max(...steps) - Math.min(...steps)).toBeLessThan(1e-9);
    expect(geometry.bars[1]?.perTick).toBeCloseTo(geometry.bars[2]?.perTick ?? 0, 9);
  });

  it('keeps every note head inside its bar', () => {
    fc.assert(
      fc.property(fc.nat(63), (sixteenth) => {
        const tick = sixteenth * 120;
        const x = headX(geometry, tick);
        expect(barAtX(geometry, x)).toBe(Math.floor(tick / 1920));
        expect(barAtX(geometry, x + 12)).toBe(Math.floor(tick / 1920));
      }),
    );
  });

  it('stacks clave, right hand, left hand and bass without overlap', () => {
    const tops = STAVES.map((staff) => geometry.lines[staff] ?? Number.NaN);
    expect(tops).toEqual(tops.toSorted((a, b) => a - b));
    expect((tops[2] ?? 0) - (tops[1] ?? 0)).toBeGreaterThan(STAFF_HEIGHT);
    expect(geometry.height).toBeGreaterThan((tops[3] ?? 0) + STAFF_HEIGHT);
  });

  it('puts an octave line over a passage of high notes, outside their marks, in place of room for leger lines', () => {
    const high = LOOP_SCORE.parts.rightHand.map((s) => ({
      ...s,
      names: s.names.map((name) => name.replace(/\d/, (digit) => String(Number(digit) + 1))),
      midi: s.midi.map((m) => m + 12),
    }));
    const higher = systemGeometry({
      notation: notate({ ...LOOP_SCORE, parts: { ...LOOP_SCORE.parts, rightHand: high } }),
      from: 0,
      to: 4,
      width: 1100,
      perSystem: 4,
      staves: STAVES,
    });
    expect(higher.octaveLines.map(({ staff, octaves, opens, closes }) => [staff, octaves, opens, closes])).toEqual([
      ['right', 1, true, true],
    ]);
    const [line] = higher.octaveLines;
    expect(line?.y).toBeLessThan((higher.lines.right ?? 0) - 11);
    expect(line?.toX).toBeGreaterThan(line?.fromX ?? Number.NaN);
    expect(Math.abs((higher.lines.right ?? 0) - (geometry.lines.right ?? 0))).toBeLessThan(30);
  });

  it('leaves staves out that are not asked for, and keeps room for four bars when there are fewer', () => {
    const short = systemGeometry({ notation, from: 1, to: 3, width: 1100, perSystem: 4, staves: ['right', 'left'] });
    expect(Object.keys(short.lines)).toEqual(['right', 'left']);
    expect(short.right).toBeLessThan(650);
  });

  it('makes room for two signs side by side right behind a note, in that place alone', () => {
    const [model] = LOOP_SCORE.parts.rightHand;
    if (!model) throw new Error('the loop has strokes');
    const close = [
      { ...model, tick: 1920 },
      { ...model, tick: 2160, midi: [70, 73], names: ['Bb4', 'Db5'] },
    ];
    const crowded = notate({ ...LOOP_SCORE, parts: { ...LOOP_SCORE.parts, rightHand: close } });
    expect(crowded.bars.map(signGaps)).toEqual([[], [{ tick: 240, extra: 10 }], [], []]);
    const wide = systemGeometry({ notation: crowded, from: 0, to: 4, width: 1100, perSystem: 4, staves: STAVES });
    const step = (from: number): number => headX(wide, from + 240) - headX(wide, from);
    expect(step(1920) - step(2160)).toBeCloseTo(10, 9);
    expect(step(0)).toBeCloseTo(step(2160), 9);
    expect(wide.right).toBeLessThanOrEqual(1100);
  });
});

describe('systemBreaks', () => {
  const bars = (...lengths: number[]): { sectionStart: string | null }[] =>
    lengths.flatMap((length, s) => Array.from({ length }, (_, i) => ({ sectionStart: i === 0 ? `S${s}` : null })));
  it.each([
    [[8], ['0-4', '4-8']],
    [
      [8, 8],
      ['0-4', '4-8', '8-12', '12-16'],
    ],
    [
      [7, 1, 4],
      ['0-4', '4-8', '8-12'],
    ],
    [
      [6, 4],
      ['0-4', '4-6', '6-10'],
    ],
    [
      [1, 2, 5],
      ['0-3', '3-7', '7-8'],
    ],
  ])('breaks sections of %j bars into %j', (lengths, expected) => {
    expect(systemBreaks(bars(...lengths), 4).map(({ from, to }) => `${from}-${to}`)).toEqual(expected);
  });
  it('covers every bar once in order, never more than allowed in a system', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 12 }),
        fc.constantFrom(1, 2, 4),
        (lengths, perSystem) => {
          const all = bars(...lengths);
          const systems = systemBreaks(all, perSystem);
          expect(systems.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, i) => from + i))).toEqual(all.map((_, i) => i));
          expect(Math.max(...systems.map(({ from, to }) => to - from))).toBeLessThanOrEqual(perSystem);
        },
      ),
    );
  });
});
