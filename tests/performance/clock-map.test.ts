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

  test('follows clocks 50 parts in a million apart for half an hour, from the readings of the last minute, to within 2 ms', () => {
    const rate = 1 + 50e-6;
    // Readings jump by a block of 128 frames (about 2.9 ms) and come a little late now and then.
    const jitter = (index: number) => ((index * 37) % 29) / 10 - 1.45 + (index % 97 === 0 ? 4 : 0);
    const all = pairs(30 * 60 * 4, 0.25, rate, 12_345, jitter);
    let worst = 0;
    for (let end = 16; end <= all.length; end += 60) {
      const map = fitClocks(all.slice(Math.max(0, end - 240), end));
      const now = (end - 1) * 0.25;
      worst = Math.max(worst, Math.abs(toInput(map, audioSeconds(now)) - (12_345 + now * 1000 * rate)));
    }
    console.log(`clock map: 50 ppm for 30 simulated minutes, largest error ${worst.toFixed(2)} ms`);
    expect(worst).toBeLessThan(2);
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
