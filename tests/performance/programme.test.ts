import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changeProgramme } from '../../src/performance/live-change';
import type { Performance } from '../../src/performance/performance';
import { firstPlayTick, forgetSpansBefore, lastPlayTick, programmeAt, soundsIn, startProgramme } from '../../src/performance/programme';
import { deepFreeze, events, performanceOf, SON_2_3, SON_3_2 } from './hand-made';

/** A stroke on every step of every bar, so that a lost or a doubled one shows. */
const everyStep = (bars: number, options: Parameters<typeof performanceOf>[2] = {}): Performance =>
  deepFreeze(
    performanceOf(
      bars,
      events(...Array.from({ length: bars * 8 }, (_, step) => ({ tick: (options.fromBar ?? 0) * 1920 + step * 240 }))),
      options,
    ),
  );
const claveSteps = (performance: Performance, startTick: number, bars: 0 | 1 | 2) =>
  startProgramme(performance, startTick, bars)
    .countIn.events.filter(({ drum }) => drum === 'clave')
    .map(({ tick }) => tick / 240);

describe('the count-in', () => {
  test('two bars before the first bar are the whole clave, one bar is the side that leads into it', () => {
    const music = everyStep(4);
    expect(claveSteps(music, 0, 2)).toEqual([2, 4, 8, 11, 14].map((step) => step - 16));
    expect(claveSteps(music, 0, 1)).toEqual([0, 3, 6].map((step) => step - 8));
    expect(claveSteps(music, 0, 0)).toEqual([]);
  });

  test('before a bar on the other side the count-in begins on the other side too', () => {
    const music = everyStep(4);
    expect(claveSteps(music, 1920, 1)).toEqual([2, 4].map((step) => step - 8));
    expect(claveSteps(music, 1920, 2)).toEqual([0, 3, 6, 10, 12].map((step) => step - 16));
  });

  test('it counts the beats that are left and then gives way to the music', () => {
    const programme = startProgramme(everyStep(4), 1920, 1);
    expect(firstPlayTick(programme)).toBe(-1920);
    expect([-1920, -1441, -1440, -480, -1].map((at) => programmeAt(programme, at).countIn)).toEqual([4, 4, 3, 1, 1]);
    expect(programmeAt(programme, -1).tick).toBe(1920);
    expect(programmeAt(programme, 0)).toMatchObject({ countIn: null, tick: 1920, pass: 0 });
  });

  test('its beats keep time while the clave rests: 1 and 3 of every bar', () => {
    const beats = startProgramme(everyStep(2), 0, 2).countIn.events.filter(({ part }) => part === 'pulse');
    expect(beats.map(({ tick, drum }) => [tick, drum])).toEqual([
      [-3840, 'pulse high'],
      [-2880, 'pulse low'],
      [-1920, 'pulse high'],
      [-960, 'pulse low'],
    ]);
  });

  test('music cannot start inside a bar', () => {
    expect(() => startProgramme(everyStep(2), 240, 0)).toThrow('240');
  });
});

describe('a live change', () => {
  test('lands on the next cycle that is not yet on its way, on the same tick of the form', () => {
    const flipped = everyStep(4, { clave: SON_3_2 });
    const landing = changeProgramme(startProgramme(everyStep(4, { clave: SON_2_3 }), 0, 0), flipped, 100);
    expect(landing).toMatchObject({ tick: 3840, playTick: 3840 });
    expect(changeProgramme(startProgramme(everyStep(4), 0, 0), flipped, 3840)).toMatchObject({ tick: 3840, playTick: 3840 });
    expect(changeProgramme(startProgramme(everyStep(4), 0, 0), flipped, 3841)).toMatchObject({ tick: 0, playTick: 7680 });
  });

  test('is heard from its landing on, and counts on in passes', () => {
    const next = everyStep(4, { clave: SON_3_2 });
    const programme = changeProgramme(startProgramme(everyStep(4), 0, 0), next, 3900)?.programme;
    if (programme === undefined) throw new Error('the change must land');
    expect(programmeAt(programme, 7679).performance).not.toBe(next);
    expect(programmeAt(programme, 7680)).toMatchObject({ performance: next, tick: 0, pass: 1 });
  });

  test('goes to the start of the new range when that no longer holds the place', () => {
    const landing = changeProgramme(startProgramme(everyStep(8), 0, 0), everyStep(2, { fromBar: 4 }), 100);
    expect(landing).toMatchObject({ tick: 4 * 1920, playTick: 3840 });
  });

  test('waits for another cycle when feel would put its first stroke before what is already on its way', () => {
    const early = performanceOf(4, events({ tick: 0, offsetTicks: -30 }, { tick: 3840, offsetTicks: -30 }));
    expect(changeProgramme(startProgramme(everyStep(4), 0, 0), early, 3820)).toMatchObject({ tick: 0, playTick: 7680 });
    const landing = changeProgramme(startProgramme(everyStep(4), 0, 0), early, 3810);
    expect(landing).toMatchObject({ tick: 3840, playTick: 3840 });
    expect(landing && soundsIn(landing.programme, 3810, 3840).map(({ playTick }) => playTick)).toEqual([3810]);
  });

  test('made twice before landing, the later one takes the place of the earlier', () => {
    const first = changeProgramme(startProgramme(everyStep(4), 0, 0), everyStep(4, { clave: SON_3_2 }), 100);
    const last = everyStep(2);
    const second = first && changeProgramme(first.programme, last, 200);
    expect(second?.programme.spans).toHaveLength(2);
    expect(second?.programme.spans[1]).toMatchObject({ performance: last, fromPlay: 3840 });
  });

  test('before anything has sounded takes the place of the music at once when the clave stays', () => {
    const programme = startProgramme(everyStep(4), 1920, 2);
    expect(changeProgramme(programme, everyStep(4), -900)).toMatchObject({ tick: 1920, playTick: 0 });
    expect(changeProgramme(programme, everyStep(4, { clave: SON_3_2 }), -900)).toMatchObject({ tick: 3840, playTick: 1920 });
  });

  test('finds no place in the last cycle of an open form, unless the new music goes round', () => {
    const programme = startProgramme(everyStep(4, { closed: false }), 0, 0);
    expect(changeProgramme(programme, everyStep(4, { closed: false }), 3900)).toBeNull();
    expect(changeProgramme(programme, everyStep(4), 3900)).toMatchObject({ tick: 0, playTick: 7680 });
  });

  test('does not strike a first-pass root that the anticipation already rings, and strikes one of another note', () => {
    const bass = (midi: number) => [
      { tick: 0, part: 'bass' as const, midi, firstPassOnly: true },
      { tick: 3360, part: 'bass' as const, midi },
    ];
    const old = startProgramme(performanceOf(2, events(...bass(40))), 0, 0);
    const struck = (midi: number) => {
      const landing = changeProgramme(old, performanceOf(2, events(...bass(midi))), 100);
      return landing && soundsIn(landing.programme, 3840, 3841).length;
    };
    expect(struck(40)).toBe(0);
    expect(struck(52)).toBe(0);
    expect(struck(43)).toBe(1);
  });

  test('never loses or doubles a stroke, however many changes come and whenever they come', () => {
    const arrangements = [everyStep(4), everyStep(8), everyStep(2), everyStep(4, { clave: SON_3_2 }), everyStep(6, { fromBar: 2 })];
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 3000 }), fc.option(fc.nat({ max: 4 }))), { minLength: 1, maxLength: 60 }),
        fc.constantFrom(0, 1, 2),
        (moves, countInBars) => {
          let programme = deepFreeze(startProgramme(everyStep(4), 0, countInBars as 0 | 1 | 2));
          let handed = firstPlayTick(programme);
          const ticks: number[] = [];
          const keys = new Set<string>();
          for (const [ahead, change] of moves) {
            for (const sound of soundsIn(programme, handed, handed + ahead)) {
              expect(keys.has(sound.key)).toBe(false);
              keys.add(sound.key);
              if (!sound.countIn) ticks.push(sound.playTick);
            }
            handed += ahead;
            if (change !== null) {
              const landing = changeProgramme(programme, arrangements[change] ?? everyStep(4), handed);
              expect(landing?.playTick ?? -1).toBeGreaterThanOrEqual(Math.max(handed, 0));
              programme = deepFreeze(forgetSpansBefore(landing?.programme ?? programme, handed));
            }
          }
          // All arrangements strike every step, so the strokes must be an unbroken row of steps.
          expect(ticks).toEqual(Array.from({ length: Math.max(0, Math.ceil(handed / 240)) }, (_, step) => step * 240));
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('the end', () => {
  test('comes after one pass of an open form, counted from where the music started', () => {
    expect(lastPlayTick(startProgramme(everyStep(4, { closed: false }), 1920, 2))).toBe(3 * 1920);
    expect(lastPlayTick(startProgramme(everyStep(4), 0, 0))).toBeNull();
  });
});
