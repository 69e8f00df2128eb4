import { describe, expect, test } from 'vitest';
import { matchTake } from '../../src/practice/match';
import { meanOf, spreadOf } from '../../src/practice/statistics';
import { deepFreeze } from '../performance/hand-made';
import { agreement, CHARTS, emptyTake, type Playing, played } from './synthetic';

/** Tempi in half notes a minute and offsets in milliseconds that the figures run through. */
const TEMPI = [25, 60, 100, 140];
const OFFSETS = [-60, -25, 0, 35, 60];

function figures(pitched: boolean, spread: number) {
  const sum = { right: 0, of: 0, moments: 0, ofMoments: 0 };
  const offsets: { readonly off: number; readonly error: number }[] = [];
  let spreadOff = 0;
  let seed = 0;
  for (const text of Object.values(CHARTS))
    for (const tempo of TEMPI)
      for (const offsetMs of OFFSETS) {
        seed += 1;
        const empty = emptyTake(text, { tempo, passes: text === CHARTS.vamp ? 10 : 5, pitched });
        const playing: Playing = { seed, offsetMs, spread, missed: 0.1, extra: 0.1, wrong: 0.05, chordMs: 25 };
        const { take, truth } = played(empty, playing);
        const matched = matchTake(take);
        const found = agreement(matched, truth);
        for (const key of ['right', 'of', 'moments', 'ofMoments'] as const) sum[key] += found[key];
        const deviations = [...truth.strokes.values()].filter(({ kind }) => kind !== 'missed').map(({ deviationMs }) => deviationMs);
        const trueSpread = spreadOf(deviations) ?? 0;
        const off = Math.abs(matched.offsetMs - (meanOf(deviations) ?? 0));
        offsets.push({ off, error: trueSpread / Math.sqrt(deviations.length) });
        spreadOff = Math.max(spreadOff, Math.abs((matched.spreadMs ?? 0) / trueSpread - 1));
      }
  return { share: sum.right / sum.of, of: sum.of, momentShare: sum.moments / sum.ofMoments, offsets, spreadOff };
}

describe('matching: seeded takes with 10 % missed, 10 % extra, wrong notes and spread chords, 25 to 140 half notes a minute', () => {
  test.each([
    { pitched: true, spread: 0.1, floor: 0.99 },
    { pitched: true, spread: 0.18, floor: 0.97 },
    { pitched: false, spread: 0.1, floor: 0.97 },
    { pitched: false, spread: 0.18, floor: 0.93 },
  ])('pitched $pitched, spread $spread of a step: at least $floor labelled as they were', ({ pitched, spread, floor }) => {
    const { share, of, momentShare, offsets, spreadOff } = figures(pitched, spread);
    const within = offsets.filter(({ off }) => off <= 1).length / offsets.length;
    const worst = Math.max(...offsets.map(({ off }) => off));
    console.log(
      `matching, ${pitched ? 'pitched' : 'claps'}, spread ${100 * spread} %: ${(100 * share).toFixed(2)} % of ${of} strokes, early and late ${(100 * momentShare).toFixed(2)} %, mean within 1 ms in ${(100 * within).toFixed(0)} % of takes (worst ${worst.toFixed(2)} ms), spread within ${(100 * spreadOff).toFixed(1)} %`,
    );
    expect(share).toBeGreaterThanOrEqual(floor);
    expect(momentShare).toBeGreaterThanOrEqual(0.99);
    expect(spreadOff).toBeLessThanOrEqual(0.1);
    // Within 1 ms, or, where a step lasts 600 ms and the mean itself is uncertain by several, within half its standard error.
    for (const { off, error } of offsets) expect(off).toBeLessThanOrEqual(Math.max(1, 0.5 * error));
  });

  test('a perfect take is right in every stroke, and the take is not changed', () => {
    const { take } = played(emptyTake(CHARTS.vamp), { seed: 1 });
    const { strokes, offsetMs, stretches, octaveShift } = matchTake(deepFreeze(take));
    expect(new Set(strokes.map(({ label }) => label))).toEqual(new Set(['right']));
    expect(Math.abs(offsetMs)).toBeLessThan(1e-6);
    expect(stretches).toEqual([{ fromPlayTick: 0, toPlayTick: take.toPlayTick, displacedSteps: 0, crossed: false }]);
    expect(octaveShift).toBe(0);
  });

  test('an empty take has every stroke missed', () => {
    const { strokes, spreadMs } = matchTake(emptyTake(CHARTS.vamp));
    expect(new Set(strokes.map(({ label }) => label))).toEqual(new Set(['missed']));
    expect(spreadMs).toBeNull();
  });

  test('both accepted endings of the 3-side bar are right', () => {
    const asked = emptyTake(CHARTS.vamp, { options: { cells: { two: 'A1', three: 'B1' } } });
    const other = emptyTake(CHARTS.vamp, { options: { cells: { two: 'A1', three: 'B5' } } });
    const last = (tick: number) => (tick / 240) % 16 === 14;
    const ends = played(other, { seed: 2 }).take.notes.filter(({ at }) => last(Math.round((at * 960 * 90) / 60)));
    const rest = played(asked, { seed: 2 }).take.notes.filter(({ at }) => Math.round((at * 960 * 90) / 60 / 240) % 16 !== 15);
    const { strokes } = matchTake({ ...asked, pitched: false, notes: [...rest, ...ends].sort((a, b) => a.at - b.at) });
    expect(new Set(strokes.map(({ label }) => label))).toEqual(new Set(['right']));
    expect(strokes.filter(({ otherEnding }) => otherEnding)).toHaveLength(4);
  });

  test('a keyboard that sounds an octave off is recognised once and forgiven', () => {
    const { take } = played(emptyTake(CHARTS.minor), {
      seed: 3,
      notes: (_, notes) => notes.map((note) => ({ ...note, midi: (note.midi ?? 0) - 12 })),
    });
    const { strokes, octaveShift } = matchTake(take);
    expect(octaveShift).toBe(-12);
    expect(new Set(strokes.map(({ label }) => label))).toEqual(new Set(['right']));
  });

  test('single octaves gone wrong are told from wrong notes; a slowly rolled chord is one stroke', () => {
    const up = (stroke: { playTick: number }) => stroke.playTick % 3840 === 0;
    const { take } = played(emptyTake(CHARTS.vamp), {
      seed: 4,
      notes: (stroke, notes) => (up(stroke) ? notes.map((note) => ({ ...note, midi: (note.midi ?? 0) + 12 })) : notes),
    });
    const odd = matchTake(take).strokes.filter(({ label }) => label !== 'right');
    expect(odd.map(({ label }) => label)).toEqual(['wrong octave', 'wrong octave', 'wrong octave', 'wrong octave']);
    const rolled = played(emptyTake(CHARTS.vamp, { tempo: 60 }), {
      seed: 5,
      notes: (_, notes) => notes.map((note, index) => ({ ...note, at: (note.at + 0.03 * index) as typeof note.at })),
    });
    const labels = matchTake(rolled.take).strokes.map(({ label }) => label);
    expect(labels.filter((label) => label === 'extra' || label === 'missed')).toEqual([]);
  });

  test('a take of thirty minutes is labelled whole', { timeout: 60_000 }, () => {
    const empty = emptyTake(CHARTS.minor, { tempo: 100, passes: 94, pitched: true });
    const { take } = played(empty, { seed: 6, spread: 0.1, missed: 0.05, extra: 0.05 });
    const from = performance.now();
    const { strokes } = matchTake(take);
    console.log(
      `matching: a take of ${((94 * 16 * 1.2) / 60).toFixed(1)} minutes, ${strokes.length} strokes, in ${(performance.now() - from).toFixed(0)} ms`,
    );
    expect(strokes.length).toBeGreaterThan(6000);
  });
});
