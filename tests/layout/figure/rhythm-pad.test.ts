import { describe, expect, it } from 'vitest';
import {
  claveMarks,
  EMPTY_PAD,
  exchanged,
  padAlignment,
  padFault,
  padFrom,
  padOfTaps,
  padText,
  playingPad,
  touched,
  withTap,
} from '../../../src/layout/figure/rhythm-pad';
import { arrange } from '../../../src/music/score';
import { chartOf } from '../../engine/progressions';

const SON = { kind: 'son', direction: '2-3' } as const;
const pad = (text: string) => padFrom(text) ?? EMPTY_PAD;

describe('the pad for rhythms', () => {
  it('reads what it writes, and nothing but sixteen steps', () => {
    expect(padText(pad('x.xx.x.x .x.xx.x.'))).toBe('x.xx.x.x .x.xx.x.');
    expect(padFrom('x.xx.x.x .x.xx.x')).toBeNull();
    expect(padFrom('x.xx.x.x .x.xx.xz')).toBeNull();
  });

  it('says which letter means nothing and where, or how many steps it found', () => {
    expect(padFault('q.xx.x.x .x.x.x.x')).toEqual({ column: 1, letter: 'q' });
    expect(padFault('x.xx.x.x .x.x.x.z')).toEqual({ column: 17, letter: 'z' });
    expect(padFault('x.xx.x.x .x.xx.x')).toEqual({ steps: 15 });
    expect(padFault('x.xx.x.x .x.xx.x.')).toBeNull();
  });

  it('begins a new rhythm after a long pause between taps', () => {
    expect([0, 240, 720, 33_600, 33_840].reduce<readonly number[]>(withTap, [])).toEqual([33_600, 33_840]);
  });

  it('goes through what a cell may hold and comes back to a rest', () => {
    let now = EMPTY_PAD;
    const seen = Array.from({ length: 6 }, () => {
      now = touched(now, 3);
      return now[3];
    });
    expect(seen).toEqual(['x', 'o', 'i', 'c', 'a', '.']);
  });

  it('puts taps on the nearest step, the first on 1, and goes round after two bars', () => {
    const step = 250;
    const taps = [0, 2.1, 3, 4.9, 7, 9, 11.2, 13, 15, 16].map((at) => 1000 + at * step);
    expect(padText(padOfTaps(taps, step))).toBe('x.xx.x.x .x.x.x.x');
    expect(padOfTaps([], step)).toEqual(EMPTY_PAD);
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
});
