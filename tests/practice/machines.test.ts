import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checked, dayOf, dueOn, firstPractised, nextInterval } from '../../src/practice/due-dates';
import { afterGap, bandPlays, driftsOf, startGap, worstDrift } from '../../src/practice/gap-drill';
import { matchTake } from '../../src/practice/match';
import { PRACTICE } from '../../src/practice/practice-limits';
import { afterBurst, afterPass, ladderStep, onNextDay, startLadder, type TempoLadder } from '../../src/practice/tempo-ladder';
import { LIMITS } from '../../src/practice/timing-limits';
import { afterKey, startKeys } from '../../src/practice/twelve-keys';
import { answer, SIDE_SOUNDS, startWhichSide } from '../../src/practice/which-side';
import { deepFreeze } from '../performance/hand-made';
import { CHARTS, emptyTake, played } from './synthetic';

const run = (ladder: TempoLadder, passes: readonly boolean[]) =>
  passes.reduce((state, clean) => afterPass(deepFreeze(state), clean), ladder);

describe('the tempo ladder', () => {
  test('up after three clean of four, down after two faults in a row, otherwise it stays', () => {
    const start = startLadder({ from: 60, goal: 92 });
    expect(run(start, [true, true, true])).toMatchObject({ tempo: 62, change: 'up', best: 60 });
    expect(run(start, [true, false, true, true])).toMatchObject({ tempo: 62, change: 'up' });
    expect(run(start, [true, false, true, false])).toMatchObject({ tempo: 60, change: 'stay' });
    expect(run(start, [false, false])).toMatchObject({ tempo: 58, change: 'down' });
    expect([ladderStep(60), ladderStep(120)]).toEqual([2, 4]);
  });

  test('a perfect player reaches the goal and stays; the next day begins two steps lower; bursts come while it climbs', () => {
    let ladder = startLadder({ from: 60, goal: 92 });
    let bursts = 0;
    for (let pass = 0; pass < 80; pass += 1) {
      ladder = afterPass(ladder, true);
      if (!ladder.burst) continue;
      bursts += 1;
      expect(ladder.tempo).toBeLessThanOrEqual(ladder.goal);
      ladder = afterBurst(ladder);
    }
    expect(ladder).toMatchObject({ tempo: 92, best: 92, change: 'reached' });
    expect(bursts).toBeGreaterThan(3);
    expect(onNextDay(ladder).tempo).toBe(92 - 3 - 3);
  });

  test('whatever happens: never above the goal, never below half the start, one step at a time', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 25, max: 140 }),
        fc.integer({ min: 25, max: 140 }),
        fc.array(fc.boolean(), { maxLength: 120 }),
        (from, goal, passes) => {
          let ladder = startLadder({ from, goal });
          for (const clean of passes) {
            const next = afterPass(ladder, clean);
            expect(next.tempo).toBeLessThanOrEqual(ladder.goal);
            expect(next.tempo).toBeGreaterThanOrEqual(Math.max(25, Math.round(ladder.from / 2)));
            expect(Math.abs(next.tempo - ladder.tempo)).toBeLessThanOrEqual(ladderStep(ladder.tempo));
            if (clean) expect(next.tempo).toBeGreaterThanOrEqual(ladder.tempo);
            ladder = next;
          }
          expect(onNextDay(ladder).tempo).toBeLessThanOrEqual(ladder.best ?? ladder.tempo);
        },
      ),
    );
  });
});

describe('what is due', () => {
  test('first after one day, then longer while clean, sooner when not', () => {
    let item = firstPractised('coro', 100);
    expect(item.due).toBe(101);
    item = checked(item, 101, 'clean');
    expect(item).toMatchObject({ intervalDays: 2, due: 103 });
    item = checked(item, 103, 'clean');
    expect(item.due).toBe(107);
    expect(checked(item, 107, 'shaky').due).toBe(111);
    expect(checked(item, 107, 'lost').due).toBe(109);
    expect(checked(item, 103, 'lost')).toBe(item);
    expect([nextInterval(1, 'lost'), nextInterval(50, 'clean')]).toEqual([1, 60]);
  });

  test('nothing while the date of a gig is set; afterwards everything, the longest overdue first', () => {
    const items = [firstPractised('b', 12), firstPractised('a', 10), firstPractised('c', 30)];
    expect(dueOn(items, 20, 25)).toEqual([]);
    expect(dueOn(items, 25, 25)).toEqual([]);
    expect(dueOn(items, 26, 25).map(({ id }) => id)).toEqual(['a', 'b']);
    expect(dueOn(items, 20, null).map(({ id }) => id)).toEqual(['a', 'b']);
  });

  test('a simulated year: every item comes back, at a growing distance, and a lost one the sooner', () => {
    const result = fc.constantFrom('clean' as const, 'shaky' as const, 'lost' as const);
    fc.assert(
      fc.property(fc.array(result, { minLength: 1, maxLength: 60 }), (results) => {
        let item = firstPractised('x', 0);
        const answers = [...results];
        for (let day = 0; day < 365 && answers.length > 0; day += 1) {
          if (dueOn([item], day, null).length === 0) continue;
          const answered = answers.shift() ?? 'clean';
          const next = checked(item, day, answered);
          expect(next.due).toBeGreaterThan(day);
          expect(next.intervalDays).toBeLessThanOrEqual(PRACTICE.longestInterval.value);
          if (answered === 'clean') expect(next.intervalDays).toBeGreaterThanOrEqual(item.intervalDays);
          if (answered === 'lost') expect(next.intervalDays).toBeLessThanOrEqual(item.intervalDays);
          item = next;
        }
      }),
    );
  });

  test('a day begins at midnight of the player', () => {
    const late = Date.UTC(2026, 10, 25, 23, 30);
    expect(dayOf(late, 60) - dayOf(late, 0)).toBe(1);
    expect(dayOf(late, -300)).toBe(dayOf(late, 0));
  });
});

describe('the gap', () => {
  test('N bars on, M off, and the drift at the re-entry in milliseconds and shares of a beat', () => {
    const drill = startGap({ onBars: 2, offBars: 2 });
    expect([0, 1, 2, 3, 4, 5, 6].map((bar) => bandPlays(drill, bar))).toEqual([true, true, false, false, true, true, false]);
    // Falls behind by 10 ms a bar while the band is silent, and is back at once when it returns.
    const empty = emptyTake(CHARTS.minor, { tempo: 60 });
    const { take } = played(empty, {
      seed: 1,
      push: ({ playTick }) => (Math.floor(playTick / 1920) % 4 < 2 ? 0 : 10 * ((Math.floor(playTick / 1920) % 4) - 1)),
    });
    const drifts = driftsOf(drill, matchTake(take).strokes, { barTicks: 1920, fromPlayTick: 0 });
    expect(drifts).toHaveLength(4);
    for (const { driftMs, ofBeat } of drifts) {
      expect(driftMs).toBeCloseTo(20, 6);
      expect(ofBeat).toBeCloseTo(0.02, 6);
    }
  });

  test('of several re-entries the largest drift counts, whichever way it goes', () => {
    const [small, behind, ahead] = [0.01, 0.2, -0.3].map((ofBeat) => ({ reentryBar: 4, driftMs: ofBeat * 800, ofBeat }));
    expect(worstDrift([small, behind, ahead].flatMap((drift) => drift ?? []))).toBe(ahead);
    expect(worstDrift([])).toBeNull();
  });

  test('grows after small drift, shrinks after large, and stays within its bounds', () => {
    const at = (ofBeat: number) => ({ reentryBar: 4, driftMs: 0, ofBeat });
    expect(afterGap(startGap({ onBars: 2 }), at(0.05)).offBars).toBe(2);
    expect(afterGap(startGap({ onBars: 2, offBars: 4 }), at(-0.2)).offBars).toBe(4);
    expect(afterGap(startGap({ onBars: 2, offBars: 4 }), null).offBars).toBe(2);
    fc.assert(
      fc.property(fc.array(fc.option(fc.double({ min: -1, max: 1, noNaN: true }))), (drifts) => {
        const end = drifts.reduce((drill, ofBeat) => afterGap(drill, ofBeat === null ? null : at(ofBeat)), startGap({ onBars: 2 }));
        expect(end.offBars).toBeGreaterThanOrEqual(1);
        expect(end.offBars).toBeLessThanOrEqual(8);
        expect(end.longestMended).toBeLessThanOrEqual(8);
      }),
    );
  });
});

describe('which side', () => {
  test('the same seed and answers give the same questions; no side comes four times running; answers are counted', () => {
    fc.assert(
      fc.property(fc.nat(10_000), fc.array(fc.constantFrom(2 as const, 3 as const), { maxLength: 60 }), (seed, answers) => {
        const start = startWhichSide({ seed, sounds: SIDE_SOUNDS, kinds: ['son', 'rumba'] });
        const walk = () => {
          const all = [start];
          for (const said of answers) all.push(answer(deepFreeze(all.at(-1) ?? start), said));
          return all;
        };
        const states = walk();
        expect(walk().map(({ question }) => question)).toEqual(states.map(({ question }) => question));
        const sides = states.map(({ question }) => question.starts);
        for (let index = 3; index < sides.length; index += 1) expect(new Set(sides.slice(index - 3, index + 1)).size).toBe(2);
        const end = states.at(-1) ?? start;
        expect(end.asked).toBe(answers.length);
        expect(end.right).toBe(answers.filter((said, index) => said === sides[index]).length);
      }),
    );
  });

  test('what is missed comes more often', () => {
    let drill = startWhichSide({ seed: 3, sounds: ['clave', 'montuno'], kinds: ['son'] });
    for (let turn = 0; turn < 300; turn += 1)
      drill = answer(drill, drill.question.sound === 'clave' ? drill.question.starts : drill.question.starts === 2 ? 3 : 2);
    const [clave, montuno] = [drill.bySound.clave?.asked ?? 0, drill.bySound.montuno?.asked ?? 0];
    expect(montuno).toBeGreaterThan(2 * clave);
  });
});

describe('twelve keys', () => {
  test('every key once when all is clean; what is not comes back after the others', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('fourths' as const, 'half steps' as const, 'mixed' as const),
        fc.nat(11),
        fc.nat(),
        fc.array(fc.boolean(), { maxLength: 30 }),
        (order, fromPc, seed, passes) => {
          let keys = startKeys({ order, fromPc, seed });
          expect(keys.now).toBe(fromPc);
          for (const clean of passes) {
            const before = keys;
            keys = afterKey(deepFreeze(keys), clean);
            const all = [...keys.done, ...(keys.now === null ? [] : [keys.now]), ...keys.ahead];
            expect([...all].sort((a, b) => a - b)).toEqual(Array.from({ length: 12 }, (_, pc) => pc));
            if (!clean && before.now !== null && before.ahead.length > 0) expect(keys.now).not.toBe(before.now);
          }
          for (let turn = 0; turn < 12; turn += 1) keys = afterKey(keys, true);
          expect(keys.now).toBeNull();
        },
      ),
    );
    expect(startKeys({ order: 'fourths', fromPc: 2, seed: 0 }).ahead.slice(0, 3)).toEqual([7, 0, 5]);
  });
});

describe('the numbers', () => {
  test('each carries its source and status', () => {
    for (const row of [...Object.values(PRACTICE), ...Object.values(LIMITS)]) {
      expect(row.source.length).toBeGreaterThan(5);
      expect(row.status.length).toBeGreaterThan(5);
      expect(Number.isFinite(row.value)).toBe(true);
    }
  });
});
