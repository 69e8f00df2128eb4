import { describe, expect, test } from 'vitest';
import { bent } from '../../../src/exchange/wav/bend';

const RATE = 44_100;
const sine = (hertz: number, frames: number) =>
  Float32Array.from({ length: frames }, (_, at) => 0.5 * Math.sin((2 * Math.PI * hertz * at) / RATE));

describe('bending a sound', () => {
  test.each([
    [440, 2 ** (2 / 12)],
    [440, 2 ** (-2 / 12)],
    [3000, 44_100 / 48_000],
    [9000, 2 ** (1 / 12)],
  ])('a tone of %i Hz read %f times as fast is that tone raised, to 66 dB', (hertz, step) => {
    const made = bent({ frames: sine(hertz, 20_000) }, step);
    let off = 0;
    // Away from the ends, where the tone begins and ends at once.
    for (let at = 500; at < 10_000; at += 1)
      off = Math.max(off, Math.abs((made[at] ?? 0) - 0.5 * Math.sin((2 * Math.PI * hertz * step * at) / RATE)));
    expect(off).toBeLessThan(0.5 * 10 ** (-66 / 20));
  });

  test('takes away what would be mirrored down from above half the rate', () => {
    // 21 kHz an octave up would come back at 2.1 kHz.
    const made = bent({ frames: sine(21_000, 20_000) }, 2);
    expect(made.subarray(500, 9000).reduce((high, value) => Math.max(high, Math.abs(value)), 0)).toBeLessThan(0.001);
  });

  test('leaves a sound read at its own rate as it is, and a first frame in its place', () => {
    const frames = Float32Array.of(1, 0, 0, 0, 0, 0, 0, 0);
    expect(bent({ frames }, 1)).toBe(frames);
    const made = bent({ frames }, 1.1);
    expect(made.indexOf(Math.max(...made))).toBe(0);
  });
});
