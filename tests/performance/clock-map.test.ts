import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitClocks, toAudio, toInput } from '../../src/performance/clock-map';
import { audioSeconds, inputMillis } from '../../src/vocabulary';

const pairs = (count: number, every: number, rate: number, offset: number, jitter: (index: number) => number) =>
  Array.from({ length: count }, (_, index) => ({
    audio: audioSeconds(index * every),
    input: inputMillis(offset + index * every * 1000 * rate + jitter(index)),
  }));

describe('the clock map', () => {
  test('finds the offset and the rate of two clocks that drift apart, through jitter of 3 ms', () => {
    fc.assert(
      fc.property(fc.integer({ min: -80, max: 80 }), fc.integer({ min: 0, max: 1_000_000 }), (ppm, offset) => {
        const rate = 1 + ppm / 1e6;
        const map = fitClocks(pairs(240, 0.25, rate, offset, (index) => 3 * Math.sin(index * 12.9898)));
        const truth = offset + 90_000 * rate;
        expect(Math.abs(toInput(map, audioSeconds(90)) - truth)).toBeLessThan(1);
        expect(toAudio(map, toInput(map, audioSeconds(90)))).toBeCloseTo(90, 9);
      }),
    );
  });

  test('takes the rates as equal when the readings span too little to tell', () => {
    const map = fitClocks(pairs(3, 0.1, 1, 500, (index) => (index === 2 ? 9 : 0)));
    expect(map.millisPerSecond).toBe(1000);
    expect(Math.abs(toInput(map, audioSeconds(0)) - 500)).toBeLessThan(5);
  });

  test('needs at least one reading', () => {
    expect(() => fitClocks([])).toThrow('at least one');
  });
});
