import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BarFrame, noteValues, type Piece, restValues } from '../../../src/layout/notation/note-values';

const CUT: BarFrame = { middle: 960, half: 960, step: 240, beat: 480, shift: 0, ticks: 1920 };
const SIX_EIGHT: BarFrame = { middle: 720, half: 720, step: 240, beat: 240, shift: 0, ticks: 1440 };
const LENGTHS = { whole: 1920, middle: 960, half: 960, step: 240, quarter: 480, eighth: 240, sixteenth: 120, 'thirty-second': 60 } as const;
const show = (pieces: readonly Piece[]): string => pieces.map((p) => `${p.at}:${p.value.shape}${'.'.repeat(p.value.dots)}`).join(' ');

// Common practice of engraving, no source: cut time is divided at beat 3, 6/8 at the fourth eighth.
describe('noteValues', () => {
  it.each([
    [0, 1920, '0:whole'],
    [0, 1440, '0:half.'],
    [0, 960, '0:half'],
    [0, 720, '0:quarter.'],
    [720, 1440, '720:eighth 960:quarter'],
    [480, 1440, '480:quarter 960:quarter'],
    [240, 720, '240:quarter'],
    [240, 960, '240:quarter.'],
    [1440, 1920, '1440:quarter'],
    [1680, 1920, '1680:eighth'],
    [720, 1920, '720:eighth 960:half'],
    [0, 360, '0:eighth.'],
    [120, 480, '120:sixteenth 240:eighth'],
  ])('writes %i to %i in cut time as %s', (from, to, expected) => expect(show(noteValues(from, to, CUT))).toBe(expected));

  it.each([
    [0, 1440, '0:half.'],
    [0, 720, '0:quarter.'],
    [480, 960, '480:eighth 720:eighth'],
    [240, 720, '240:quarter'],
  ])('writes %i to %i in 6/8 as %s', (from, to, expected) => expect(show(noteValues(from, to, SIX_EIGHT))).toBe(expected));

  it('counts a pickup from the end of a full bar', () => {
    const pickup: BarFrame = { ...CUT, shift: 1440 - 240, ticks: 720 };
    expect(show(noteValues(0, 720, pickup))).toBe('0:quarter.');
    expect(show(noteValues(0, 480, { ...CUT, shift: 720, ticks: 1200 }))).toBe('0:eighth 240:eighth');
  });

  const spanIn = (frame: BarFrame) =>
    fc
      .tuple(fc.nat(frame.ticks / 60 - 1), fc.nat(frame.ticks / 60 - 1))
      .map(([a, b]) => [Math.min(a, b) * 60, (Math.max(a, b) + 1) * 60] as const);
  it.each([
    ['cut time', CUT],
    ['6/8', SIX_EIGHT],
  ] as const)('covers any span of %s without gap, each value as long as its shape says, notes and rests alike', (_, frame) => {
    fc.assert(
      fc.property(spanIn(frame), ([from, to]) => {
        for (const pieces of [noteValues(from, to, frame), restValues(from, to, frame)]) {
          let at: number = from;
          for (const piece of pieces) {
            expect(piece.at).toBe(at);
            expect(piece.ticks).toBe(LENGTHS[piece.value.shape] * (piece.value.dots === 1 ? 1.5 : 1));
            at += piece.ticks;
          }
          expect(at).toBe(to);
        }
      }),
    );
  });
});

describe('restValues', () => {
  it.each([
    [0, 960, '0:half'],
    [240, 960, '240:eighth 480:quarter'],
    [480, 1440, '480:quarter 960:quarter'],
    [0, 720, '0:quarter 480:eighth'],
    [960, 1920, '960:half'],
  ])('rests from %i to %i in cut time as %s', (from, to, expected) => expect(show(restValues(from, to, CUT))).toBe(expected));
  it('rests a dotted quarter or a quarter at the start of a half of 6/8, eighths elsewhere', () => {
    expect(show(restValues(0, 720, SIX_EIGHT))).toBe('0:quarter.');
    expect(show(restValues(720, 1200, SIX_EIGHT))).toBe('720:quarter');
    expect(show(restValues(240, 720, SIX_EIGHT))).toBe('240:eighth 480:eighth');
  });
});
