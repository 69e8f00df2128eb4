import { describe, expect, test } from 'vitest';
import type { Performance } from '../../src/performance/performance';
import { type ProgrammeSound, programmeAt } from '../../src/performance/programme';
import { landingOf, NO_WISHES, vampAt } from '../../src/performance/vamps';
import { begin, cue, everyStep, runs, walk, withVamps } from './vamp-walk';

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
    // Met to within a window of 60 ticks.
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

  test('names the round and the form it belongs to, and counts rounds as no passes of the form', () => {
    const form = withVamps('form');
    const { decided } = walk(begin(form), 12 * 1920, {
      each: (now, _, handed) => (handed === 8 * 1920 ? cue(now) : now),
    });
    const place = programmeAt(decided.programme, 10 * 1920 + 100);
    expect(place).toMatchObject({ performance: form, form, tick: 4 * 1920 + 100, pass: 0 });
    expect(programmeAt(decided.programme, 7 * 1920)).toMatchObject({ performance: form.vamps?.[0]?.round, form, tick: 3 * 1920, pass: 2 });
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

  test('leaves the pass of the form as it was', () => {
    const next = withVamps('new');
    const { decided } = walk(begin(withVamps('form')), 9 * 1920, {
      each: (now, _, handed) => (handed === 5 * 1920 ? { ...now, wishes: { change: next, cued: false } } : now),
    });
    expect(programmeAt(decided.programme, 6 * 1920 + 100)).toMatchObject({ performance: next, tick: 2 * 1920 + 100, pass: 0 });
  });
});

describe('what is struck the first time only', () => {
  /** The form with a stroke of its own on the first tick of bars 3 and 6, in the last bar of a vamp and after it. */
  const withFirsts = (): Performance => {
    const form = withVamps('form');
    const firsts = (performance: Performance) =>
      performance.events.map((event) => ({ ...event, firstPassOnly: event.tick === 3 * 1920 || event.tick === 6 * 1920 }));
    const vamps = (form.vamps ?? []).map((vamp) => ({ ...vamp, round: { ...vamp.round, events: firsts(vamp.round) } }));
    return { ...form, events: firsts(form), vamps };
  };
  const struck = (sounds: readonly ProgrammeSound[], bar: number) =>
    sounds.filter(({ event }) => event.tick === bar * 1920).map(({ playTick }) => playTick / 1920);

  test('sounds once where a vamp begins to be held, and once after it is left, also when the form comes round again', () => {
    const cues = new Set([4, 9, 15, 17].map((bar) => bar * 1920));
    const { sounds } = walk(begin(withFirsts()), 24 * 1920, { each: (now, _, handed) => (cues.has(handed) ? cue(now) : now) });
    // Held for a round in bars 4 and 5 and again in 10 to 13; the form begins again on bar 14.
    expect(struck(sounds, 3)).toEqual([3]);
    expect(struck(sounds, 6)).toEqual([8]);
    expect(struck(sounds, 5).length).toBeGreaterThan(1);
  });
});

describe('a playhead between ticks', () => {
  test('reads the same state as one on the tick', () => {
    const handed = 4 * 1920 + 60;
    const { decided } = walk(begin(withVamps('form')), handed);
    for (let heard = 2 * 1920 + 0.1; heard < handed; heard += 0.37) expect(vampAt(decided, heard, handed)?.state).toBe('holding');
    const { decided: left } = walk(begin(withVamps('form')), handed, {
      // Back in the form exactly on the last beat.
      each: (now, _, at) => (at === 3 * 1920 + 1380 ? cue(now) : now),
    });
    for (let heard = 3 * 1920 + 0.1; heard < 4 * 1920; heard += 0.37) expect(vampAt(left, heard, handed)?.state).toBe('leaving');
  });
});
