import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Performance } from '../../src/performance/performance';
import { type ProgrammeSound, programmeAt, soundsIn, startProgramme } from '../../src/performance/programme';
import { type Decided, decideUntil, landingOf, NO_WISHES, vampAt } from '../../src/performance/vamps';
import { deepFreeze, events, performanceOf } from './hand-made';

/** A stroke on every step, marked by what it belongs to; `offset` is the feel of every step in turn. */
function everyStep(name: string, fromBar: number, bars: number, offsets: readonly number[] = [0], closed = true): Performance {
  const strokes = Array.from({ length: bars * 8 }, (_, step) => ({
    tick: fromBar * 1920 + step * 240,
    drum: name,
    midi: null,
    offsetTicks: offsets[step % offsets.length] ?? 0,
  }));
  return performanceOf(bars, events(...strokes), { fromBar, closed });
}

/** Eight bars with open vamps on bars 2–3 and 4–7, each with its round. */
function withVamps(name: string, { offsets = [0], closed = true }: { offsets?: readonly number[]; closed?: boolean } = {}): Performance {
  const vamp = (fromBar: number, toBar: number) => ({
    fromTick: fromBar * 1920,
    toTick: toBar * 1920,
    turns: [(toBar - 1) * 1920, toBar * 1920 - 480] as const,
    round: everyStep(`round of ${name}`, fromBar, toBar - fromBar, offsets),
  });
  return deepFreeze({ ...everyStep(name, 0, 8, offsets, closed), vamps: [vamp(2, 4), vamp(4, 8)] });
}

const begin = (performance: Performance, tick = 0): Decided => ({ programme: startProgramme(performance, tick, 0), wishes: NO_WISHES });

/** Walks through a programme in windows of `window` ticks; what is heard lags behind what is handed over by `lag` ticks. */
function walk(
  start: Decided,
  ticks: number,
  { window = 60, lag = 400, each = (decided: Decided, _heard: number, _handed: number) => decided } = {},
): { readonly sounds: readonly ProgrammeSound[]; readonly decided: Decided } {
  let decided = start;
  const sounds: ProgrammeSound[] = [];
  for (let handed = 0; handed < ticks; handed += window) {
    decided = each(decided, handed - lag, handed);
    decided = decideUntil(decided, handed, handed + window);
    sounds.push(...soundsIn(decided.programme, handed, handed + window));
  }
  return { sounds, decided };
}
const cue = (decided: Decided): Decided => ({ ...decided, wishes: { ...decided.wishes, cued: true } });
/** What sounds as runs: name, first and last step of the form. */
function runs(sounds: readonly ProgrammeSound[]): string[] {
  const found: { name: string; from: number; to: number }[] = [];
  for (const { event } of sounds) {
    const step = event.tick / 240;
    const last = found.at(-1);
    if (last && last.name === event.drum && last.to + 1 === step) last.to = step;
    else found.push({ name: String(event.drum), from: step, to: step });
  }
  return found.map(({ name, from, to }) => `${name} ${from}–${to}`);
}

describe('an open vamp', () => {
  test('goes round from its last bar on, leading back to its own start', () => {
    const { sounds } = walk(begin(withVamps('form')), 8 * 1920);
    expect(runs(sounds)).toEqual(['form 0–23', 'round of form 24–31', 'round of form 16–31', 'round of form 16–31']);
    sounds.forEach(({ playTick }, index) => {
      expect(playTick).toBe(index * 240);
    });
  });

  test('cued in time is left at the end of the round, with the form from its last bar on; the next vamp holds again', () => {
    const { sounds } = walk(begin(withVamps('form')), 14 * 1920, {
      each: (decided, _, handed) => (handed === 4 * 1920 + 1200 ? cue(decided) : decided),
    });
    expect(runs(sounds)).toEqual([
      'form 0–23',
      'round of form 24–31',
      'round of form 16–23',
      'form 24–55',
      'round of form 56–63',
      'round of form 32–63',
    ]);
  });

  test('cued on its first time through is never held', () => {
    const { sounds } = walk(begin(withVamps('form')), 8 * 1920, {
      each: (decided, _, handed) => (handed === 2 * 1920 + 480 ? cue(decided) : decided),
    });
    expect(runs(sounds)).toEqual(['form 0–55', 'round of form 56–63']);
  });

  test('cued in its last bar, before the strokes that lead on, takes those from the form', () => {
    const { sounds } = walk(begin(withVamps('form')), 6 * 1920, {
      each: (decided, _, handed) => (handed === 3 * 1920 + 1380 ? cue(decided) : decided),
    });
    expect(runs(sounds)).toEqual(['form 0–23', 'round of form 24–29', 'form 30–47']);
  });

  test('cued when the strokes that lead back are on their way says one more round, and then leaves', () => {
    const said: (string | null)[] = [];
    const { sounds } = walk(begin(withVamps('form')), 8 * 1920, {
      lag: 400,
      each: (decided, heard, handed) => {
        // The sound has beat 4; what is heard is still before it.
        if (handed !== 3 * 1920 + 1500) return decided;
        const cued = cue(decided);
        said.push(vampAt(decided, heard, handed)?.state ?? null, vampAt(cued, heard, handed)?.state ?? null);
        return cued;
      },
    });
    expect(said).toEqual(['holding', 'one more round']);
    expect(runs(sounds)).toEqual(['form 0–23', 'round of form 24–31', 'round of form 16–23', 'form 24–47']);
  });

  test('is left as soon as said: in the round that is left the state is leaving to its very end, and then it is no more', () => {
    const states = new Map<number, string | null>();
    walk(begin(withVamps('form')), 8 * 1920, {
      each: (decided, heard, handed) => {
        const now = handed === 3 * 1920 + 1500 ? cue(decided) : decided;
        if (heard >= 0) states.set(heard, vampAt(now, heard, handed)?.state ?? null);
        return now;
      },
    });
    const firstOf = (wanted: string | null, from = 0) => [...states].find(([at, state]) => at >= from && state === wanted)?.[0];
    // Windows are 60 ticks and what is heard lags by 400, so places are met to within a window.
    expect(firstOf('holding')).toBe(2 * 1920 + 20);
    expect(firstOf('one more round')).toBe(3 * 1920 + 1500 - 400);
    expect(firstOf('leaving')).toBe(4 * 1920 + 20);
    expect(firstOf('holding', 4 * 1920)).toBe(6 * 1920 + 20);
  });

  test('that ends a form which is played once keeps it from ending until it is cued', () => {
    const held = walk(begin(withVamps('form', { closed: false })), 40 * 1920, {
      each: (decided, _, handed) => (handed === 2 * 1920 + 600 || handed === 30 * 1920 ? cue(decided) : decided),
    });
    expect(runs(held.sounds).at(-1)).toBe('form 56–63');
    expect(held.sounds.at(-1)?.playTick).toBeLessThan(34 * 1920);
  });

  test('counts its rounds as no passes of the form', () => {
    const { decided } = walk(begin(withVamps('form')), 12 * 1920, {
      each: (now, _, handed) => (handed === 8 * 1920 ? cue(now) : now),
    });
    const place = programmeAt(decided.programme, 10 * 1920 + 100);
    expect(place).toMatchObject({ tick: 4 * 1920 + 100, pass: 0 });
    expect(programmeAt(decided.programme, 7 * 1920)).toMatchObject({ tick: 3 * 1920, pass: 2 });
  });

  test('stands still for the playhead: what is heard names the round and the form it belongs to', () => {
    const form = withVamps('form');
    const { decided } = walk(begin(form), 6 * 1920);
    expect(programmeAt(decided.programme, 5 * 1920)).toMatchObject({ performance: form.vamps?.[0]?.round, form });
    expect(programmeAt(decided.programme, 1920)).toMatchObject({ performance: form, form });
  });
});

describe('a live change in an open vamp', () => {
  test('lands on the next cycle of the vamp, which then goes round in the new music', () => {
    const next = withVamps('new');
    let landing: number | null = null;
    const { sounds } = walk(begin(withVamps('form')), 8 * 1920, {
      each: (decided, _, handed) => {
        if (handed !== 5 * 1920) return decided;
        const asked = { ...decided, wishes: { ...decided.wishes, change: next } };
        landing = landingOf(asked, handed);
        return asked;
      },
    });
    expect(landing).toBe(2 * 1920);
    expect(runs(sounds)).toEqual(['form 0–23', 'round of form 24–31', 'round of form 16–31', 'new 16–23', 'round of new 24–31']);
  });

  test('asked for together with a cue lands after the vamp when that comes first', () => {
    const next = withVamps('new');
    const { sounds } = walk(begin(withVamps('form')), 7 * 1920, {
      each: (decided, _, handed) => (handed === 4 * 1920 + 240 ? { ...decided, wishes: { change: next, cued: true } } : decided),
    });
    expect(runs(sounds)).toEqual(['form 0–23', 'round of form 24–31', 'round of form 16–23', 'form 24–31', 'new 32–39']);
  });

  test('to music without the vamp forgets the cue', () => {
    const plain = everyStep('plain', 0, 8);
    const { decided } = walk(begin(withVamps('form')), 9 * 1920, {
      each: (now, _, handed) => {
        // In the four-bar vamp: a change lands in its middle, before the place where it would be left.
        if (handed === 2 * 1920 + 60) return cue(now);
        return handed === 8 * 1920 - 120
          ? now
          : handed === 4 * 1920 + 60
            ? { programme: now.programme, wishes: { change: plain, cued: true } }
            : now;
      },
    });
    expect(decided.wishes).toEqual(NO_WISHES);
    expect(programmeAt(decided.programme, 8 * 1920).performance).toBe(plain);
  });
});

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
                now = { ...now, wishes: { ...now.wishes, change: withVamps(`form ${serial}`, { offsets, closed }) } };
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
