import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Unrolled } from '../../src/performance/occurrences';
import { endOf, occurrencesIn, placeAt } from '../../src/performance/occurrences';
import { nearestTick, secondsAt, steadyTempo } from '../../src/performance/tempo';
import { halfNotesPerMinute, songSeconds } from '../../src/vocabulary';
import { deepFreeze, events, performanceOf } from './hand-made';

const unrolled = fc
  .record({
    bars: fc.integer({ min: 1, max: 6 }),
    fromBar: fc.integer({ min: 0, max: 5 }),
    closed: fc.boolean(),
    start: fc.nat(),
    places: fc.array(fc.record({ at: fc.nat(), off: fc.integer({ min: -60, max: 60 }), first: fc.boolean() }), { maxLength: 40 }),
  })
  .map(({ bars, fromBar, closed, start, places }): Unrolled => {
    const sketches = places.map(({ at, off, first }) => ({
      tick: fromBar * 1920 + (at % (bars * 1920)),
      offsetTicks: off,
      firstPassOnly: first,
    }));
    const performance = performanceOf(bars, events(...sketches), { fromBar, closed });
    return deepFreeze({ performance, startTick: performance.fromTick + (start % bars) * 1920 });
  });

/** What must sound, spelled out pass by pass without windows. */
function expected({ performance, startTick }: Unrolled, to: number): string[] {
  const found: string[] = [];
  const length = performance.toTick - performance.fromTick;
  for (let pass = 0; pass * length < to + length * 2 && (performance.closed || pass === 0); pass += 1)
    for (const event of performance.events) {
      const notated = event.tick - startTick + pass * length;
      const playTick = Math.max(0, notated + event.offsetTicks);
      if (notated >= 0 && playTick < to && !(event.firstPassOnly && pass > 0)) found.push(`${playTick}/${pass}/${event.id}`);
    }
  return found.sort();
}

describe('occurrences', () => {
  test('windows laid end to end hold every sound exactly once, whatever their sizes', () => {
    fc.assert(
      fc.property(unrolled, fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 25 }), (music, sizes) => {
        const found: string[] = [];
        let from = 0;
        let last = 0;
        for (const size of sizes) {
          for (const { playTick, pass, event } of occurrencesIn(music, from, from + size)) {
            expect(playTick).toBeGreaterThanOrEqual(Math.max(from, last));
            expect(playTick).toBeLessThan(from + size);
            last = playTick;
            found.push(`${playTick}/${pass}/${event.id}`);
          }
          from += size;
        }
        expect(found.sort()).toEqual(expected(music, from));
      }),
      { numRuns: 300 },
    );
  });

  test('a sound on the loop start sounds on every pass, and one marked for the first pass on that alone', () => {
    const performance = performanceOf(2, events({ tick: 0 }, { tick: 0, firstPassOnly: true }, { tick: 3839 }));
    const found = occurrencesIn({ performance, startTick: 0 }, 0, 3 * 3840);
    expect(found.map(({ playTick, event }) => [playTick, event.id])).toEqual([
      [0, 0],
      [0, 1],
      [3839, 2],
      [3840, 0],
      [7679, 2],
      [7680, 0],
      [11519, 2],
    ]);
  });

  test('music entered in the middle comes round to the loop start as its second pass', () => {
    const performance = performanceOf(4, events({ tick: 0, firstPassOnly: true }, { tick: 1920 }));
    const music = { performance, startTick: 1920 };
    expect(occurrencesIn(music, 0, 8000).map(({ playTick, pass }) => [playTick, pass])).toEqual([
      [0, 0],
      [7680, 1],
    ]);
    expect(placeAt(music, 5760)).toEqual({ tick: 0, pass: 1 });
    expect(placeAt(music, 5759.5)).toEqual({ tick: 7679.5, pass: 0 });
  });

  test('an open performance sounds once and is then over', () => {
    const performance = performanceOf(2, events({ tick: 0 }), { closed: false });
    expect(occurrencesIn({ performance, startTick: 0 }, 0, 50_000)).toHaveLength(1);
    expect(endOf({ performance, startTick: 1920 })).toBe(1920);
    expect(endOf({ performance: performanceOf(2, []), startTick: 0 })).toBeNull();
  });

  test('at every tempo from 25 to 140 half notes and every one of 16 loop starts each onset sounds exactly once a pass', () => {
    const passes = 20;
    for (let tempo = 25; tempo <= 140; tempo += 1) {
      const map = steadyTempo(halfNotesPerMinute(tempo));
      for (let fromBar = 0; fromBar < 16; fromBar += 1) {
        // Sounds on the loop start and on the last tick are the ones that rounding would lose or double.
        const made = [0, 1, 240, 959, 1919, 1920, 2640, 3839].map((tick) => ({ tick: fromBar * 1920 + tick }));
        const music = { performance: performanceOf(2, events(...made), { fromBar }), startTick: fromBar * 1920 };
        const end = secondsAt(map, passes * 3840);
        const counts = new Map<number, number>();
        let from = 0;
        for (let now = 0; now < end + 0.05; now += 0.05) {
          const to = Math.min(passes * 3840, nearestTick(map, songSeconds(Math.min(now, end))));
          for (const { event } of occurrencesIn(music, from, to)) counts.set(event.id, (counts.get(event.id) ?? 0) + 1);
          from = Math.max(from, to);
        }
        expect([...counts.values()], `tempo ${tempo}, bar ${fromBar}`).toEqual(made.map(() => passes));
      }
    }
  });
});
