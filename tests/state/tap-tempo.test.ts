import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addTap, heldTempo, tapTempo } from '../../src/state/tap-tempo';
import { type InputMillis, inputMillis } from '../../src/vocabulary';

const taps = (...times: number[]): readonly InputMillis[] =>
  times.reduce<readonly InputMillis[]>((run, time) => addTap(run, inputMillis(time)), []);

describe('A tapped tempo', () => {
  it('is the median of the distances, so that one late tap changes nothing', () => {
    expect(tapTempo(taps(0, 600, 1200, 2000, 2600), 'half')).toBe(100);
  });

  it('counts quarter notes as half of a half note', () => {
    expect(tapTempo(taps(0, 300, 600), 'quarter')).toBe(100);
  });

  it('needs two taps', () => {
    expect(tapTempo(taps(), 'half')).toBeNull();
    expect(tapTempo(taps(500), 'half')).toBeNull();
  });

  it('begins anew after more than three seconds, and when the clock goes back', () => {
    expect(taps(0, 600, 3700)).toEqual([3700]);
    expect(taps(0, 600, 3600)).toEqual([0, 600, 3600]);
    expect(taps(900, 600)).toEqual([600]);
  });

  it('stays within 25 to 140 half notes whatever is tapped', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 4000 }), { minLength: 1, maxLength: 12 }),
        fc.constantFrom('half' as const, 'quarter' as const),
        (gaps, unit) => {
          let at = 0;
          const tempo = tapTempo(taps(0, ...gaps.map((gap) => (at += gap))), unit);
          if (tempo === null) return;
          expect(tempo).toBeGreaterThanOrEqual(25);
          expect(tempo).toBeLessThanOrEqual(140);
        },
      ),
    );
    expect([heldTempo(0), heldTempo(62.4), heldTempo(9999)]).toEqual([25, 62, 140]);
  });
});
