import { describe, expect, test } from 'vitest';
import { AHEAD_SECONDS, startLookAhead, TICK_MS } from '../../src/audio/look-ahead';
import type { SoundOnItsWay } from '../../src/state/listening/ports';
import { audioSeconds, halfNotesPerMinute } from '../../src/vocabulary';
import { events, performanceOf, SON_3_2 } from '../performance/hand-made';

/** One render quantum of the Web Audio API: 128 frames (Web Audio API 1.0, section "Rendering an audio graph"). */
const RENDER_QUANTUM_SECONDS = 128 / 48_000;

const everyStep = (bars: number, options: Parameters<typeof performanceOf>[2] = {}) =>
  performanceOf(
    bars,
    events(...Array.from({ length: bars * 8 }, (_, step) => ({ tick: (options.fromBar ?? 0) * 1920 + step * 240 }))),
    options,
  );

const TICK = TICK_MS / 1000;

/** Ticks a look-ahead as players do from 0 to `seconds`, doing `each` before every tick. */
function run(
  requested: Parameters<typeof startLookAhead>[0],
  seconds: number,
  each: (ahead: ReturnType<typeof startLookAhead>, now: number) => void = () => {},
) {
  const ahead = startLookAhead(requested, audioSeconds(0));
  const sounds: SoundOnItsWay[] = [];
  for (let count = 0; count * TICK <= seconds; count += 1) {
    each(ahead, count * TICK);
    sounds.push(...ahead.advance(audioSeconds(count * TICK + AHEAD_SECONDS)));
  }
  return { ahead, sounds };
}
const request = (
  performance: ReturnType<typeof everyStep>,
  tempo: number,
  fromTick = performance.fromTick,
  countInBars: 0 | 1 | 2 = 0,
) => ({
  performance,
  fromTick,
  tempo: halfNotesPerMinute(tempo),
  countInBars,
});

describe('the look-ahead', () => {
  test('gives the exact number of onsets at every tempo from 25 to 140 half notes and every one of 16 loop starts', () => {
    for (let tempo = 25; tempo <= 140; tempo += 1)
      for (let fromBar = 0; fromBar < 16; fromBar += 1) {
        const music = performanceOf(2, events(...[0, 240, 1919, 1920, 3839].map((tick) => ({ tick: fromBar * 1920 + tick }))), { fromBar });
        const passSeconds = (4 * 60) / tempo;
        const ahead = startLookAhead(request(music, tempo), audioSeconds(1));
        let count = 0;
        // The windows end exactly on loop starts, where flooring would lose the first tick.
        for (let pass = 1; pass <= 16; pass += 1) count += ahead.advance(audioSeconds(1 + pass * passSeconds)).length;
        expect(count, `tempo ${tempo}, loop from bar ${fromBar}`).toBe(16 * 5);
      }
  });

  test('loses none, doubles none and keeps the order while the tempo changes by one every 100 ms for 60 s', () => {
    let tempo = 90;
    let steps = 0;
    const { sounds } = run(request(everyStep(4), tempo), 60, (ahead, now) => {
      if (now > 0 && Math.round(now * 1000) % 100 === 0) {
        tempo += Math.floor(now) % 2 === 0 ? 1 : -1;
        ahead.setTempo(halfNotesPerMinute(tempo));
      }
      // What this tick hands over: the whole look-ahead at first, then a tick; a half note is four steps.
      steps += ((now === 0 ? AHEAD_SECONDS : TICK) * tempo * 4) / 60;
    });
    expect(Math.abs(sounds.length - steps)).toBeLessThan(1.01);
    expect(new Set(sounds.map(({ key }) => key)).size).toBe(sounds.length);
    sounds.forEach(({ event, pass, at }, index) => {
      expect(pass * 32 + event.tick / 240).toBe(index);
      const before = sounds[index - 1];
      if (before !== undefined) expect(at).toBeGreaterThan(before.at);
    });
  });

  test('takes a new tempo on the next sound that is not on its way', () => {
    const { sounds } = run(request(everyStep(4), 60), 4, (ahead, now) => {
      if (Math.round(now * 1000) === 1000) ahead.setTempo(halfNotesPerMinute(120));
    });
    const gaps = sounds.slice(1).map(({ at }, index) => at - (sounds[index]?.at ?? 0));
    expect(gaps[3]).toBeCloseTo(0.25, 9);
    expect(gaps.at(-1)).toBeCloseTo(0.125, 9);
    // The gap in which the change falls is partly slow and partly fast; all before are slow, all after fast.
    expect(gaps.filter((gap) => Math.abs(gap - 0.25) > 1e-9 && Math.abs(gap - 0.125) > 1e-9).length).toBeLessThanOrEqual(1);
  });

  test('places the last onset of 500 passes within one render quantum of its exact time', () => {
    const tempo = 97;
    const ahead = startLookAhead(request(everyStep(2), tempo), audioSeconds(0.5));
    const exact = 0.5 + (500 * 4 - 1 / 4) * (60 / tempo);
    let last: SoundOnItsWay | undefined;
    for (let until = 0.7; until < exact + 0.05; until += 0.19) last = ahead.advance(audioSeconds(until)).at(-1) ?? last;
    last = ahead.advance(audioSeconds(exact + 0.05)).at(-1) ?? last;
    expect(last?.pass).toBe(499);
    expect(last?.event.tick).toBe(3840 - 240);
    expect(Math.abs((last?.at ?? 0) - exact)).toBeLessThan(RENDER_QUANTUM_SECONDS);
  });

  test('lets a change land on the next cycle without a gap, and shows it from then on', () => {
    const next = everyStep(4, { clave: SON_3_2 });
    const { ahead, sounds } = run(request(everyStep(4), 60), 6, (look, now) => {
      if (Math.round(now * 1000) === 1000) expect(look.change(next)).toBe(3840);
    });
    sounds.forEach(({ at }, index) => {
      expect(at).toBeCloseTo(index * 0.25, 9);
    });
    expect(ahead.heardAt(audioSeconds(3.99)).performance).not.toBe(next);
    expect(ahead.heardAt(audioSeconds(4.01))).toMatchObject({ performance: next, pass: 0, countIn: null });
  });

  test('counts in with the clave, then plays, and knows what is heard', () => {
    const { ahead, sounds } = run(request(everyStep(4), 60, 0, 2), 6);
    expect(sounds.filter(({ countIn, event }) => countIn && event.drum === 'clave').map(({ at }) => at)).toEqual([0.5, 1, 2, 2.75, 3.5]);
    expect(sounds.find(({ countIn }) => !countIn)?.at).toBe(4);
    expect(ahead.heardAt(audioSeconds(0.1))).toMatchObject({ countIn: 8, tick: 0 });
    expect(ahead.heardAt(audioSeconds(3.6))).toMatchObject({ countIn: 1 });
    expect(ahead.heardAt(audioSeconds(4.25))).toMatchObject({ countIn: null, tick: 240, pass: 0 });
  });

  test('ends an open form after its last bar', () => {
    const { ahead, sounds } = run(request(everyStep(2, { closed: false }), 60), 8);
    expect(sounds).toHaveLength(16);
    expect(ahead.endsAt()).toBe(4);
    expect(ahead.heardAt(audioSeconds(7)).tick).toBe(3840);
  });

  test('cues at any moment, as heard, are answered with what then happens: no onset lost or doubled, each a step after the last', () => {
    const vamp = (fromBar: number, bars: number) => ({
      fromTick: fromBar * 1920,
      toTick: (fromBar + bars) * 1920,
      turns: [(fromBar + bars - 1) * 1920, (fromBar + bars) * 1920 - 480] as const,
      round: everyStep(bars, { fromBar }),
    });
    const form = { ...everyStep(8), vamps: [vamp(2, 2), vamp(4, 4)] };
    // The vamp of bars 2 and 3 is heard from 4 s on and lasts 4 s a round; the sound is 0.4 s ahead and beat 4 lies 0.5 s before the end.
    for (let cuedAt = 3.9; cuedAt < 16; cuedAt += 0.1) {
      let said: string | null = null;
      let wasCued = false;
      const { sounds } = run(request(form, 60), 40, (look, now) => {
        if (wasCued || now < cuedAt) return;
        wasCued = true;
        said = look.cueAt(audioSeconds(now));
      });
      sounds.forEach(({ at }, index) => {
        expect(at).toBeCloseTo(index * 0.25, 9);
      });
      const moment = Math.ceil(cuedAt / TICK - 1e-9) * TICK;
      if (moment < 4) {
        expect(said).toBeNull();
        continue;
      }
      const end = 4 + Math.ceil((moment - 4 + 1e-9) / 4) * 4;
      const handedTo = moment + AHEAD_SECONDS - TICK;
      const inTime = handedTo <= end - 0.5 + 1e-9;
      expect(said, `cue at ${moment}`).toBe(inTime ? 'leaving' : 'one more round');
      const left = sounds.find(({ event }) => event.tick === 4 * 1920);
      expect(left?.at, `cue at ${moment}`).toBeCloseTo(inTime ? end : end + 4, 9);
    }
  });
});
