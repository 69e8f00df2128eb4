import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';
import { STYLES } from '../../src/music/styles/styles';
import { steadyTempo } from '../../src/performance/tempo';
import { barsUntilBack, planSurprises, rearranged } from '../../src/practice/lost-and-found';
import { matchTake } from '../../src/practice/match';
import { areNearTwins, atClock, goOn, type PlanItem, planSession, startPlan } from '../../src/practice/practice-plan';
import { freshChart, READING_LOOPS, type ReadingDifficulty } from '../../src/practice/sight-reading';
import type { Take } from '../../src/practice/take';
import { halfNotesPerMinute } from '../../src/vocabulary';
import { deepFreeze } from '../performance/hand-made';
import { CHARTS, emptyTake, played } from './synthetic';

describe('lost and found', () => {
  test('the same seed surprises in the same way, with peace before, between and after', () => {
    fc.assert(
      fc.property(fc.nat(5000), fc.integer({ min: 4, max: 32 }), fc.integer({ min: 1, max: 4 }), (seed, bars, rounds) => {
        const plan = planSurprises({ bars, seed, rounds });
        expect(planSurprises({ bars, seed, rounds })).toEqual(plan);
        const added = plan.surprises.reduce((sum, { kind, bars: many }) => sum + (kind === 'again' ? many : -many), 0);
        expect(plan.order).toHaveLength(bars * rounds + added);
        let last = 0;
        for (const { atBar } of plan.surprises) {
          expect(atBar - last).toBeGreaterThanOrEqual(6);
          last = atBar;
        }
      }),
    );
  });

  test('bars until back: 0 for who follows at once, 3 for who stays crossed for three bars, none for who never finds it', () => {
    const { music: source } = emptyTake(CHARTS.vamp);
    const order = [0, 1, 2, 3, 4, 5, 6, 7, 1, 2, 3, 4, 5, 6, 7, 0, 1, 2, 3, 4, 5];
    const music = rearranged(deepFreeze(source.performance), order);
    expect(music.bars.map(({ cycleStep }) => cycleStep).slice(6, 10)).toEqual([0, 8, 8, 0]);
    const empty: Take = {
      music: { performance: music, startTick: 0, fromPlay: 0 },
      score: null,
      tempo: steadyTempo(halfNotesPerMinute(90)),
      fromPlayTick: 0,
      toPlayTick: music.toTick,
      parts: ['piano right', 'piano left'],
      notes: [],
      pitched: true,
      timing: 'calibrated',
    };
    const right = played(empty, { seed: 1, spread: 0.05 }).take.notes;
    const atBar = 8;
    const crossedFor = (bars: number): Take => {
      const second = 1920 / (16 * 90 * 1);
      const from = atBar * second;
      const to = (atBar + bars) * second;
      // Crossed: goes on as if no bar had been dropped, that is with what the band will play a bar later.
      const other = right
        .filter(({ at }) => at >= from - second && at < to - second)
        .map((note) => ({ ...note, at: (note.at + second) as typeof note.at }));
      const own = right.filter(({ at }) => at < from - 0.02 || at >= to - 0.02);
      return { ...empty, notes: [...own, ...other].sort((a, b) => a.at - b.at) };
    };
    expect(barsUntilBack(matchTake({ ...empty, notes: right }), music, atBar)).toBe(0);
    expect(barsUntilBack(matchTake(crossedFor(3)), music, atBar)).toBe(3);
    expect(barsUntilBack(matchTake({ ...empty, notes: right.filter(({ at }) => at < 10) }), music, atBar)).toBeNull();
  });
});

describe('reading at sight', () => {
  const styles = STYLES.filter(({ onClave, name }) => onClave && name !== 'bembe').map(({ name }) => name);

  test('every seed, style and difficulty gives a chart that reads and arranges; the same seed the same chart', () => {
    fc.assert(
      fc.property(
        fc.nat(100_000),
        fc.constantFrom(...styles),
        fc.constantFrom<ReadingDifficulty>(1, 2, 3, 4),
        (seed, style, difficulty) => {
          const text = freshChart({ seed, style, difficulty, title: `Fresh chart ${seed}` });
          expect(freshChart({ seed, style, difficulty, title: `Fresh chart ${seed}` })).toBe(text);
          const read = readChart(text);
          expect(read.ok ? [] : read.faults).toEqual([]);
          if (!read.ok) return;
          const score = arrange(read.value);
          expect(score.bars).toHaveLength(difficulty === 4 ? 16 : 8);
          expect(score.parts.rightHand.length).toBeGreaterThan(8);
        },
      ),
      { numRuns: 150 },
    );
  });

  test('charts differ from seed to seed, and every loop comes up', () => {
    const texts = new Set(
      Array.from({ length: 60 }, (_, seed) => freshChart({ seed, style: 'salsa', difficulty: 3, title: 'Fresh chart' })),
    );
    expect(texts.size).toBeGreaterThan(40);
    expect(new Set(READING_LOOPS.map(({ from }) => from))).toEqual(new Set([1, 2, 3]));
  });
});

describe('a practice plan', () => {
  const item = (id: string, family: string, level: number, isNew = true): PlanItem => ({ id, family, level, isNew });

  test('near-twins of what is new are never neighbours; what cannot be kept apart waits for tomorrow', () => {
    const arbitrary = fc.array(
      fc.record({ family: fc.constantFrom('a', 'b', 'c'), level: fc.integer({ min: 1, max: 6 }), isNew: fc.boolean() }),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(arbitrary, fc.boolean(), (rows, rests) => {
        const items = rows.map((row, index) => ({ ...row, id: `item ${index}` }));
        const { parts, tomorrow } = planSession(items, { rests });
        const order = parts.flatMap((part) => (part.kind === 'play' ? [part.item] : [])).filter((id, index, all) => id !== all[index - 1]);
        expect([...order, ...tomorrow].sort()).toEqual(items.map(({ id }) => id).sort());
        const of = (id: string) => items.find((each) => each.id === id) as PlanItem;
        order.slice(1).forEach((id, index) => {
          expect(areNearTwins(of(order[index] ?? ''), of(id))).toBe(false);
        });
        const breaks = parts.filter(({ kind }) => kind === 'break').length;
        expect(breaks).toBe(Math.max(0, Math.ceil(order.length / 3) - 1));
      }),
    );
    expect(planSession([item('1', 'a', 1), item('2', 'a', 2)], { rests: false }).tomorrow).toEqual(['2']);
  });

  test('thirty seconds on and off, and no prompt in the middle of a loop', () => {
    const plan = planSession([item('1', 'a', 1), item('2', 'b', 1)], { rests: true, roundsPerBlock: 2 });
    expect(plan.parts.map(({ kind, seconds }) => `${kind} ${seconds}`)).toEqual([
      'play 30',
      'rest 30',
      'play 30',
      'play 30',
      'rest 30',
      'play 30',
    ]);
    let run = startPlan(plan, 100);
    expect(atClock(run, 129, false).prompt).toBeNull();
    expect(atClock(run, 145, true).prompt).toBeNull();
    run = atClock(run, 146, false);
    expect(run.prompt).toBe('rest');
    run = goOn(run, 150);
    expect(run).toMatchObject({ part: 1, prompt: null });
    for (let part = 0; part < 5; part += 1) run = goOn(run, 200 + part);
    expect(run.prompt).toBe('over');
    expect(goOn(run, 900)).toMatchObject({ part: 6, prompt: 'over' });
  });

  test('whatever the clock does, a prompt comes only outside a loop and after the time of its part', () => {
    const events = fc.array(fc.record({ wait: fc.double({ min: -5, max: 60, noNaN: true }), inside: fc.boolean(), on: fc.boolean() }), {
      maxLength: 60,
    });
    fc.assert(
      fc.property(events, (list) => {
        let run = startPlan(planSession([item('1', 'a', 1), item('2', 'b', 1), item('3', 'c', 1), item('4', 'a', 4)], { rests: true }), 0);
        let now = 0;
        for (const { wait, inside, on } of list) {
          now += wait;
          const next = atClock(run, now, inside);
          if (next.prompt !== null && run.prompt === null) {
            expect(inside).toBe(false);
            expect(now - run.since).toBeGreaterThanOrEqual(run.plan.parts[run.part]?.seconds ?? 0);
          }
          run = on ? goOn(next, now) : next;
        }
      }),
    );
  });
});
