import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createStamps } from '../../src/input/stamps';

describe('the stamps of a device', () => {
  it('are taken as they come when they are good', () => {
    const stamps = createStamps();
    expect(stamps.read(1000.3, 1002)).toEqual({ at: 1000.3, coarse: false });
    // The notes of a chord in one packet share a stamp.
    expect(stamps.read(1000.3, 1002.4)).toEqual({ at: 1000.3, coarse: false });
    expect(stamps.rounding()).toBeNull();
  });

  it.each([
    ['missing', undefined],
    ['zero', 0],
    ['not a number', Number.NaN],
    ['seconds away', 60_000],
  ])('%s: the moment of hearing is taken and marked coarse', (_, stamped) => {
    expect(createStamps().read(stamped, 5000)).toEqual({ at: 5000, coarse: true });
  });

  it('that stand still are not believed', () => {
    const stamps = createStamps();
    stamps.read(1000, 1001);
    expect(stamps.read(1000, 1400)).toEqual({ at: 1400, coarse: true });
  });

  it('that jump back are not believed, and those after the jump are', () => {
    const stamps = createStamps();
    stamps.read(1900, 1901);
    expect(stamps.read(1200, 1950)).toEqual({ at: 1950, coarse: true });
    expect(stamps.read(2000, 2001)).toEqual({ at: 2000, coarse: false });
  });

  it.each([100, 50, 1000 / 60, 16, 10])('rounded to %s ms are found out after eight different ones', (mark) => {
    const stamps = createStamps();
    let at = 0;
    for (let tap = 1; tap <= 9; tap += 1) {
      const now = 1000 + tap * 217.3;
      at = Math.floor(now / mark) * mark;
      const { coarse } = stamps.read(at, now);
      expect(coarse).toBe(tap >= 8);
    }
    expect(stamps.rounding()).not.toBeNull();
  });

  it('with a tenth of a millisecond, or whole milliseconds, are exact enough', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 31, max: 400 }), { minLength: 30, maxLength: 30 }), (gaps) => {
        // Thirty gaps that are all multiples of ten would be a rounding of ten.
        fc.pre(gaps.filter((gap) => gap % 10 !== 0 && gap % 16 !== 0).length > 20);
        const stamps = createStamps();
        let now = 5003;
        let coarse = 0;
        for (const gap of gaps) {
          now += gap;
          if (stamps.read(now, now + 1).coarse) coarse += 1;
        }
        expect(coarse).toBe(0);
      }),
      { numRuns: 100, seed: 6 },
    );
  });
});
