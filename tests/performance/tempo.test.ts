import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { TempoMap } from '../../src/performance/tempo';
import { forgetBefore, nearestTick, secondsAt, secondsOf, steadyTempo, tempoAt, tickAt, withTempo } from '../../src/performance/tempo';
import { halfNotesPerMinute, songSeconds } from '../../src/vocabulary';
import { deepFreeze } from './hand-made';

const tempo = fc.integer({ min: 25, max: 140 }).map(halfNotesPerMinute);
const tempoMap = fc.array(fc.tuple(fc.integer({ min: 0, max: 5000 }), tempo), { maxLength: 12 }).chain((steps) =>
  tempo.map((first) => {
    let map: TempoMap = steadyTempo(first);
    let tick = 0;
    for (const [ahead, next] of steps) {
      tick += ahead;
      map = withTempo(map, tick, next);
    }
    return deepFreeze(map);
  }),
);

describe('the tempo map', () => {
  test('counts half notes: at 60 a half note of 960 ticks lasts one second, at 120 half of one', () => {
    expect(secondsOf(960, halfNotesPerMinute(60))).toBe(1);
    expect(secondsAt(steadyTempo(halfNotesPerMinute(120)), 960)).toBe(0.5);
  });

  test('a change takes effect at its tick and leaves what lies before where it was', () => {
    const map = withTempo(steadyTempo(halfNotesPerMinute(60)), 960, halfNotesPerMinute(120));
    expect(secondsAt(map, 480)).toBe(0.5);
    expect(secondsAt(map, 960)).toBe(1);
    expect(secondsAt(map, 1920)).toBe(1.5);
    expect([tempoAt(map, 959), tempoAt(map, 960)]).toEqual([60, 120]);
  });

  test('a second change at the same tick takes the place of the first', () => {
    const map = withTempo(withTempo(steadyTempo(halfNotesPerMinute(60)), 960, halfNotesPerMinute(61)), 960, halfNotesPerMinute(120));
    expect(map).toHaveLength(2);
    expect(secondsAt(map, 1920)).toBe(1.5);
  });

  test('a change before the last one is a mistake of ours and throws', () => {
    const map = withTempo(steadyTempo(halfNotesPerMinute(60)), 960, halfNotesPerMinute(90));
    expect(() => withTempo(map, 959, halfNotesPerMinute(60))).toThrow('959');
  });

  test('every tick comes back from its own moment, whatever the tempo changes', () => {
    fc.assert(
      fc.property(tempoMap, fc.integer({ min: -4000, max: 100_000 }), (map, tick) => {
        expect(nearestTick(map, secondsAt(map, tick))).toBe(tick);
        expect(tickAt(map, secondsAt(map, tick))).toBeCloseTo(tick, 5);
      }),
    );
  });

  test('time never runs backwards', () => {
    fc.assert(
      fc.property(tempoMap, fc.integer({ min: -4000, max: 70_000 }), fc.integer({ min: 1, max: 5000 }), (map, tick, ahead) => {
        expect(secondsAt(map, tick + ahead)).toBeGreaterThan(secondsAt(map, tick));
      }),
    );
  });

  test('forgetting old stretches moves nothing that is still to come', () => {
    fc.assert(
      fc.property(tempoMap, fc.integer({ min: 0, max: 60_000 }), fc.integer({ min: 0, max: 9000 }), (map, tick, ahead) => {
        expect(secondsAt(forgetBefore(map, tick), tick + ahead)).toBe(secondsAt(map, tick + ahead));
      }),
    );
  });

  test('the last of 500 passes of a two-bar loop is exact to a nanosecond', () => {
    const map = steadyTempo(halfNotesPerMinute(97));
    // 3840 ticks are 4 half notes, so pass 500 begins at 2000 × 60 / 97 seconds.
    expect(secondsAt(map, 500 * 3840)).toBeCloseTo((2000 * 60) / 97, 9);
    expect(songSeconds(0)).toBe(0);
  });
});
