import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/practice/assess';
import { expectedStrokes } from '../../src/practice/expected-strokes';
import { matchTake } from '../../src/practice/match';
import { onsetsInSong, partOfTake } from '../../src/practice/take';
import { audioSeconds, inputMillis, songSeconds } from '../../src/vocabulary';
import { FINDINGS } from '../../src/words/findings';
import { CHARTS, emptyTake, played } from './synthetic';

/** Notes as no player plays them: repeated moments, clusters, far outside, never let go. */
const strayNotes = fc.array(
  fc.record({
    at: fc.oneof(fc.double({ min: -20, max: 60, noNaN: true }), fc.constantFrom(0, 1.5, 1.5001)),
    midi: fc.option(fc.integer({ min: 0, max: 127 })),
    velocity: fc.integer({ min: 1, max: 127 }),
    length: fc.option(fc.double({ min: 0, max: 3, noNaN: true })),
  }),
  { maxLength: 120 },
);

describe('any take at all', () => {
  test('gets one label for every stroke asked for, no note twice, and sentences that are whole', () => {
    fc.assert(
      fc.property(
        strayNotes,
        fc.constantFrom(25, 90, 140),
        fc.boolean(),
        fc.constantFrom(...Object.values(CHARTS)),
        (stray, tempo, pitched, text) => {
          const notes = stray
            .map(({ at, midi, velocity, length }) => ({
              at: songSeconds(at),
              until: length === null ? null : songSeconds(at + length),
              midi: pitched ? (midi ?? 60) : null,
              velocity,
            }))
            .sort((a, b) => a.at - b.at);
          const take = { ...emptyTake(text, { tempo, pitched }), notes };
          const matched = matchTake(take);
          const asked = matched.stretches.flatMap(({ fromPlayTick, toPlayTick, displacedSteps }) =>
            expectedStrokes(take, fromPlayTick, toPlayTick, displacedSteps),
          );
          expect(matched.strokes.filter(({ expected }) => expected)).toHaveLength(asked.length);
          const used = matched.strokes.flatMap(({ played: stroke }) => stroke?.notes ?? []);
          expect(new Set(used).size).toBe(used.length);
          const places = matched.strokes.map(({ playTick }) => playTick);
          expect(places).toEqual([...places].sort((a, b) => a - b));
          const { shareRight, all, findings } = assess(take, matched);
          expect(shareRight).toBeGreaterThanOrEqual(0);
          expect(shareRight).toBeLessThanOrEqual(1);
          expect(findings.length).toBeLessThanOrEqual(3);
          for (const { facts, loop } of all) {
            expect(FINDINGS.sentence(facts)).not.toMatch(/undefined|NaN|Infinity|null/);
            expect(loop.toBar).toBeGreaterThan(loop.fromBar);
            expect(loop.toBar).toBeLessThanOrEqual(take.music.performance.bars.length);
          }
        },
      ),
      { numRuns: 120 },
    );
  });

  test('a part of a take is judged as that part was played, also when it was entered in the middle of the form', () => {
    const whole = emptyTake(CHARTS.minor, { passes: 2 });
    const { take } = played(whole, { seed: 9, spread: 0.05 });
    const half = partOfTake(take, 4 * 1920, 12 * 1920);
    const { strokes } = matchTake(half);
    expect(new Set(strokes.map(({ label }) => label))).toEqual(new Set(['right']));
    expect(() => partOfTake(take, 0, 1e9)).toThrow('a part must lie in');
    const later = { ...whole, music: { ...whole.music, startTick: 6 * 1920 } };
    const entered = matchTake(played(later, { seed: 10, spread: 0.05 }).take);
    expect(new Set(entered.strokes.map(({ label }) => label))).toEqual(new Set(['right']));
    expect(entered.strokes[0]?.expected).toMatchObject({ bar: 6, pass: 0, playTick: 240, step: 1 });
  });

  test('claps come onto the clock of the song with the delay of their device taken off', () => {
    const clocks = { middle: { audio: audioSeconds(10), input: inputMillis(50_000) }, millisPerSecond: 1000 };
    const clock = { clocks, songZero: audioSeconds(12), latencyMs: 30 };
    const [second, first] = onsetsInSong(
      [
        { at: inputMillis(53_030), strength: 2 },
        { at: inputMillis(52_030), strength: 0 },
      ],
      clock,
    ).reverse();
    expect(first?.at).toBeCloseTo(0, 9);
    expect(second?.at).toBeCloseTo(1, 9);
    expect([first?.velocity, second?.velocity]).toEqual([1, 127]);
  });
});
