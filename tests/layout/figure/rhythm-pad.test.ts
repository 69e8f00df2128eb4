import { describe, expect, it } from 'vitest';
import {
  claveMarks,
  emptyPad,
  exchanged,
  padAlignment,
  padFault,
  padFrom,
  padIn,
  padOfTaps,
  padText,
  playingPad,
  roleOfKey,
  stepAfterKey,
  touched,
  withTap,
} from '../../../src/layout/figure/rhythm-pad';
import { arrange } from '../../../src/music/score';
import { chartOf } from '../../engine/progressions';

const SON = { kind: 'son', direction: '2-3' } as const;
const EMPTY = emptyPad(16);
const pad = (text: string) => padFrom(text, 16) ?? EMPTY;

describe('the pad for rhythms', () => {
  it('reads what it writes, and nothing but sixteen steps', () => {
    expect(padText(pad('x.xx.x.x .x.xx.x.'))).toBe('x.xx.x.x .x.xx.x.');
    expect(padFrom('x.xx.x.x .x.xx.x', 16)).toBeNull();
    expect(padFrom('x.xx.x.x .x.xx.xz', 16)).toBeNull();
  });

  it('says which letter means nothing and where, or how many steps it found', () => {
    expect(padFault('q.xx.x.x .x.x.x.x', 16)).toEqual({ column: 1, letter: 'q' });
    expect(padFault('x.xx.x.x .x.x.x.z', 16)).toEqual({ column: 17, letter: 'z' });
    expect(padFault('x.xx.x.x .x.xx.x', 16)).toEqual({ steps: 15 });
    expect(padFault('x.xx.x.x .x.xx.x.', 16)).toBeNull();
  });

  it('begins a new rhythm after a long pause between taps', () => {
    expect([0, 240, 720, 33_600, 33_840].reduce<readonly number[]>(withTap, [])).toEqual([33_600, 33_840]);
  });

  it('goes through what a cell may hold and comes back to a rest', () => {
    let now = EMPTY;
    const seen = Array.from({ length: 7 }, () => {
      now = touched(now, 3);
      return now[3];
    });
    expect(seen).toEqual(['x', 'o', 'i', 'c', 's', 'a', '.']);
  });

  it('puts taps on the nearest step, the first on 1, and goes round after two bars', () => {
    const step = 250;
    const taps = [0, 2.1, 3, 4.9, 7, 9, 11.2, 13, 15, 16].map((at) => 1000 + at * step);
    expect(padText(padOfTaps(taps, step, 16))).toBe('x.xx.x.x .x.x.x.x');
    expect(padOfTaps([], step, 16)).toEqual(EMPTY);
  });

  it('says what the rhythm states, and the opposite with its bars exchanged (standard montuno: 2-3 by expert labels, M. Vurkaç, UCI 324)', () => {
    const standard = pad('x.xx.x.x .x.x.x.x');
    expect(padAlignment(standard, SON).verdict).toBe('aligned');
    expect(padAlignment(exchanged(standard), SON).verdict).toBe('crossed');
  });

  it('marks the strokes of the clave (son 2-3 on steps 2 4 8 11 14: Santos, 2009)', () => {
    expect(claveMarks(SON).flatMap((on, step) => (on ? [step] : []))).toEqual([2, 4, 8, 11, 14]);
  });

  it('takes the figure that plays, with its roles', () => {
    const score = arrange(chartOf('key: D\nclave: 3-2 son\n| Em7 | A7 | D6 | % |'));
    expect(playingPad(score)).toEqual({ pad: [...pad('.i.o.i.o o.io.i.o')], direction: '3-2' });
  });

  it('takes one bar for both, the single note, and twelve steps in 6/8', () => {
    expect(padText(pad('s.i.o.i.'))).toBe('s.i.o.i. s.i.o.i.');
    expect(padText(padFrom('x.xx.x .x.x.x', 12) ?? [])).toBe('x.xx.x .x.x.x');
    expect(padFrom('x.xx.x.x', 12)).toBeNull();
    expect(padFault('x.xx.x.x', 12)).toEqual({ steps: 8 });
    // The seven-stroke bell with the 3-side first: 0 2 4 5 7 9 11 (timbales pattern sheet, "Basic Patterns").
    expect(claveMarks({ kind: 'bembe', direction: '3-2' }).flatMap((on, step) => (on ? [step] : []))).toEqual([0, 2, 4, 5, 7, 9, 11]);
    expect(padAlignment(emptyPad(12), { kind: 'bembe', direction: '3-2' }).verdict).toBe('neutral');
  });

  it('keeps its bars with their sides when the direction flips', () => {
    const written = pad('x.xx.x.x .x.xx.x.');
    expect(padText(padIn(written, '2-3', '3-2'))).toBe('.x.xx.x. x.xx.x.x');
    expect(padIn(padIn(written, '2-3', '3-2'), '3-2', '2-3')).toEqual(written);
  });

  it('is walked by the arrow keys and filled by letters', () => {
    expect([stepAfterKey(0, 'ArrowLeft', 16), stepAfterKey(3, 'ArrowDown', 16), stepAfterKey(11, 'Home', 16)]).toEqual([15, 11, 8]);
    expect([stepAfterKey(2, 'ArrowUp', 12), stepAfterKey(7, 'End', 12), stepAfterKey(7, 'q', 12)]).toEqual([8, 11, null]);
    expect([roleOfKey('O'), roleOfKey('Delete'), roleOfKey('.'), roleOfKey('Enter')]).toEqual(['o', '.', '.', null]);
  });
});
