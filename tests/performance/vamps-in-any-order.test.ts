import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { programmeAt } from '../../src/performance/programme';
import { vampAt } from '../../src/performance/vamps';
import { begin, cue, walk, withVamps } from './vamp-walk';

describe('vamps, cues, changes and feel in any order', () => {
  const scenario = fc.record({
    offsets: fc.array(fc.integer({ min: -60, max: 60 }), { minLength: 1, maxLength: 16 }),
    closed: fc.boolean(),
    startBar: fc.integer({ min: 0, max: 7 }),
    window: fc.integer({ min: 1, max: 2500 }),
    lag: fc.integer({ min: 0, max: 900 }),
    asks: fc.array(fc.record({ at: fc.nat({ max: 60_000 }), what: fc.constantFrom('cue', 'change') }), { maxLength: 8 }),
  });

  test('every step sounds exactly once, in its place, whatever is asked and whenever; what was said about a cue is done', () => {
    fc.assert(
      fc.property(scenario, ({ offsets, closed, startBar, window, lag, asks }) => {
        const waiting = asks.toSorted((a, b) => a.at - b.at);
        const promises: { readonly said: string; readonly end: number; readonly round: number }[] = [];
        let serial = 0;
        const { sounds, decided } = walk(begin(withVamps('form 0', { offsets, closed }), startBar * 1920), 60_000, {
          window,
          lag,
          each: (start, heard, handed) => {
            let now = start;
            while (waiting[0] && waiting[0].at <= handed) {
              const what = waiting.shift()?.what;
              if (what === 'change') {
                serial += 1;
                now = {
                  ...now,
                  wishes: { ...now.wishes, change: withVamps(`form ${serial}`, { offsets: offsets.map((offset) => -offset), closed }) },
                };
              } else if (vampAt(now, heard, handed)?.state === 'holding') {
                now = cue(now);
                const after = vampAt(now, heard, handed);
                const { tick } = programmeAt(now.programme, heard);
                const round = (after?.vamp.toTick ?? 0) - (after?.vamp.fromTick ?? 0);
                // A change to come would move the end; it is looked at in tests of its own.
                if (after && serial === 0) promises.push({ said: after.state, end: heard + after.vamp.toTick - tick, round });
              }
            }
            return now;
          },
        });
        expect(new Set(sounds.map(({ key }) => key)).size).toBe(sounds.length);
        const notated = sounds.map(({ playTick, event }) => playTick - event.offsetTicks);
        // Only at the very start may feel be held back, so that nothing sounds before it.
        expect(notated.filter((place, index) => place % 240 !== 0 && sounds[index]?.playTick !== 0)).toEqual([]);
        const places = notated.map((place) => Math.floor(Math.max(0, place) / 240)).sort((a, b) => a - b);
        expect(places).toEqual(places.map((_, index) => index));
        sounds.forEach(({ playTick }, index) => {
          expect(playTick).toBeGreaterThanOrEqual(sounds[index - 1]?.playTick ?? 0);
        });
        if (serial > 0) return;
        for (const { said, end, round } of promises) {
          const left = said === 'leaving' ? end : end + round;
          if (left >= 55_000) continue;
          const before = programmeAt(decided.programme, left - 1);
          const after = programmeAt(decided.programme, left);
          expect(before.performance).toBe(before.form);
          expect(after.performance).toBe(after.form);
          expect(after.tick === before.tick + 1 || after.tick === 0 || !closed).toBe(true);
        }
      }),
      { numRuns: 400 },
    );
  });
});
