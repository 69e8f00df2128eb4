import { describe, expect, test } from 'vitest';
import { assess } from '../../src/practice/assess';
import type { FindingFacts } from '../../src/practice/finding';
import type { ExpectedStroke } from '../../src/practice/labelled';
import { matchTake } from '../../src/practice/match';
import type { Take } from '../../src/practice/take';
import { noticeableMs } from '../../src/practice/timing-limits';
import { songSeconds } from '../../src/vocabulary';
import { FINDINGS } from '../../src/words/findings';
import { CHARTS, emptyTake, type Playing, played } from './synthetic';

const SPREAD = { spread: 0.08 };
const judge = (take: Take) => assess(take, matchTake(take));
const kinds = (take: Take) => judge(take).findings.map(({ facts }) => facts.kind);
const play = (playing: Partial<Playing>, empty: Take = emptyTake(CHARTS.minor)): Take =>
  played(empty, { seed: 11, ...SPREAD, ...playing }).take;
const factsOf = <Kind extends FindingFacts['kind']>(take: Take, kind: Kind) => {
  const found = judge(take).all.find(({ facts }) => facts.kind === kind);
  return found?.facts as Extract<FindingFacts, { kind: Kind }> | undefined;
};
const odd = ({ step }: ExpectedStroke) => step % 2 === 1;

describe('what a take is told', () => {
  test('a good take is told nothing, is clean and in time, at every tempo', () => {
    for (const tempo of [25, 60, 90, 140])
      for (const text of Object.values(CHARTS)) {
        const found = judge(play({ offsetMs: -20, chordMs: 15 }, emptyTake(text, { tempo, passes: 2 })));
        expect(found.all).toEqual([]);
        expect(found).toMatchObject({ clean: true, shareRight: 1, timing: 'in time', findings: [] });
      }
  });

  test('shifts that nobody notices are never a fault', () => {
    for (const tempo of [25, 60, 140])
      for (const push of [1, -1]) {
        const empty = emptyTake(CHARTS.minor, { tempo });
        const { all } = judge(
          play({ spread: 0, push: (stroke) => (odd(stroke) ? push : -push) * 0.99 * noticeableMs(stroke.stepMs) }, empty),
        );
        expect(all).toEqual([]);
      }
  });

  test('crossed is said once and alone, with the loop where it begins', () => {
    const found = judge(play({ displacedSteps: 8 }));
    expect(found.all.map(({ facts }) => facts)).toEqual([{ kind: 'crossed', fromStart: true, bar: 0 }]);
    expect(found.findings[0]?.loop).toEqual({ fromBar: 0, toBar: 2 });
    expect(found).toMatchObject({ clean: false, shareRight: 0, faults: [] });
    expect(kinds(play({ displacedSteps: 2 }))).toEqual(['displaced']);
  });

  test('chords changed late: the old chord on the stroke that takes the new one', () => {
    const empty = emptyTake(CHARTS.minor);
    const score = empty.score;
    const late = play(
      {
        notes: (stroke, notes) => {
          const own = score?.parts.rightHand.find(({ tick }) => tick === stroke.tick);
          if (!own || own.leadTicks === 0) return notes;
          // The notes of the stroke before, in whatever octave: what the hand still holds.
          const before = score?.parts.rightHand.findLast(({ tick, leadTicks }) => tick < stroke.tick && leadTicks === 0);
          return notes.map((note, index) => ({ ...note, midi: before?.midi[index % before.midi.length] ?? note.midi }));
        },
      },
      empty,
    );
    const facts = factsOf(late, 'late chords');
    expect(facts?.step).toBe(7);
    expect(facts?.count).toBeGreaterThanOrEqual(4);
    expect(kinds(late)[0]).toBe('late chords');
  });

  test('wrong notes over one chord name it', () => {
    const empty = emptyTake(CHARTS.minor);
    const wrong = play(
      {
        notes: (stroke, notes) => {
          const own = empty.score?.parts.rightHand.find(({ tick }) => tick === stroke.tick);
          return own?.chord === 'Gm' && own.leadTicks === 0 ? notes.map((note) => ({ ...note, midi: (note.midi ?? 0) + 1 })) : notes;
        },
      },
      empty,
    );
    expect(factsOf(wrong, 'wrong notes')?.chord).toBe('Gm');
    expect(kinds(wrong)[0]).toBe('wrong notes');
  });

  test('rushing and dragging, by how much', () => {
    for (const [push, kind] of [
      [-12, 'rushing'],
      [12, 'dragging'],
    ] as const) {
      const take = play({ push: ({ playTick }) => (push * playTick) / 3840 });
      expect(kinds(take)[0]).toBe(kind);
      expect(factsOf(take, kind)?.msPerCycle).toBeGreaterThan(10);
      expect(factsOf(take, kind)?.msPerCycle).toBeLessThan(14);
    }
  });

  test('triplet swing, as a share of a step; early offbeats are no fault', () => {
    const swung = play({ push: (stroke) => (odd(stroke) ? stroke.stepMs / 3 : 0) });
    expect(factsOf(swung, 'swung')?.shareOfStep).toBeCloseTo(1 / 3, 1);
    expect(kinds(swung)[0]).toBe('swung');
    expect(kinds(play({ push: (stroke) => (odd(stroke) ? -15 : 10) }))).toEqual([]);
  });

  // That swing is played with late offbeats is common practice, no source; no other style of the table says that it swings.
  test('in a chart or a section of swing, swung eighths are how it goes; in the other bars they are told', () => {
    const swung = (text: string, options = {}) =>
      judge(play({ push: (stroke) => (odd(stroke) ? stroke.stepMs / 3 : 0) }, emptyTake(text, { passes: 2, options }))).all.map(
        ({ facts }) => facts.kind,
      );
    const chart = CHARTS.vamp.replace('style: salsa', 'style: swing');
    expect(swung(chart)).toEqual([]);
    expect(swung(chart, { style: 'merengue' })).toEqual(['swung']);
    expect(swung(CHARTS.vamp.replace('[A]', '[A, style: swing]'))).toEqual([]);
    expect(swung(CHARTS.vamp.replace('style: salsa', 'style: swing').replace('[A]', '[A, style: son]'))).toEqual(['swung']);
  });

  test('a step that is off is named with its side', () => {
    const take = play({ push: ({ cycleStep }) => (cycleStep === 5 ? 70 : 0) });
    expect(factsOf(take, 'step off')).toMatchObject({ cycleStep: 5, step: 5, side: 3 });
  });

  test('the left hand behind the right, notes cut short, inner notes too loud', () => {
    const empty = emptyTake(CHARTS.minor, { passes: 2 });
    const left = play(
      {
        notes: (stroke, notes) =>
          notes.map((note) =>
            stroke.notes.some(({ part, midi }) => part === 'piano left' && midi === note.midi)
              ? { ...note, at: songSeconds(note.at + 0.034) }
              : note,
          ),
      },
      empty,
    );
    expect(factsOf(left, 'hands apart')?.leftBehindMs).toBeGreaterThan(30);
    const short = play({ notes: (_, notes) => notes.map((note) => ({ ...note, until: songSeconds(note.at + 0.05) })) }, empty);
    expect(factsOf(short, 'cut short')).toMatchObject({ step: 7 });
    const flat = play({ notes: (stroke, notes) => notes.map((note) => ({ ...note, velocity: 80 + ((stroke.tick / 240) % 3) })) }, empty);
    expect(factsOf(flat, 'inner loud')).toBeDefined();
    expect(factsOf(play({}, empty), 'inner loud')).toBeUndefined();
  });

  test('strokes left out and added on one step are named by it', () => {
    const empty = emptyTake(CHARTS.vamp, { passes: 2 });
    const left = play({ notes: (stroke, notes) => (stroke.cycleStep === 2 ? [] : notes) }, empty);
    expect(factsOf(left, 'missed')).toMatchObject({ step: 2 });
    expect(FINDINGS.sentence({ kind: 'missed', count: 2, of: 9, step: 2, bar: 0 }, true)).toContain('on 3 ');
    const added = play(
      {
        notes: (stroke, notes) =>
          stroke.cycleStep === 7
            ? [...notes, ...notes.slice(0, 1).map((note) => ({ ...note, at: songSeconds(note.at + stroke.stepMs / 1000) }))]
            : notes,
      },
      empty,
    );
    expect(factsOf(added, 'extra')).toMatchObject({ step: 0 });
  });

  test('nothing played, or stopped on the way: said so, and not counted as missed', () => {
    expect(kinds(emptyTake(CHARTS.minor))).toEqual(['silent']);
    const take = play({ notes: (stroke, notes) => (stroke.playTick >= 8 * 1920 ? [] : notes) });
    expect(judge(take).all.map(({ facts }) => facts)).toEqual([{ kind: 'stopped', bar: 8 }]);
  });

  test('without trust in the clock nothing is said about milliseconds; a constant offset only when the device is calibrated', () => {
    const wild = { spread: 0.2, offsetMs: 60, push: ({ playTick }: ExpectedStroke) => (-12 * playTick) / 3840 };
    for (const timing of ['coarse', 'off'] as const) {
      const found = judge({ ...play(wild), timing });
      expect(found.all).toEqual([]);
      expect(found.timing).toBeNull();
      expect(found.faults).toEqual([]);
    }
    const late = play({ offsetMs: 55 });
    expect(kinds(late)).toEqual(['offset']);
    expect(kinds({ ...late, timing: 'uncalibrated' })).toEqual([]);
  });

  test('never more than three, the worst first, each with whole cycles to loop and one sentence', () => {
    const empty = emptyTake(CHARTS.minor, { passes: 2 });
    const take = play(
      { spread: 0.25, missed: 0.2, extra: 0.2, wrong: 0.3, push: (stroke) => (odd(stroke) ? stroke.stepMs / 3 : 0) },
      empty,
    );
    const { findings, all } = judge(take);
    expect(findings).toHaveLength(3);
    expect(all.length).toBeGreaterThan(3);
    const weights = all.map(({ weight }) => weight);
    expect(weights).toEqual([...weights].sort((a, b) => b - a));
    for (const { facts, loop } of all) {
      expect(loop.fromBar % 2).toBe(0);
      expect(loop.toBar % 2).toBe(0);
      expect(loop.toBar).toBeGreaterThan(loop.fromBar);
      const sentence = FINDINGS.sentence(facts);
      expect(sentence).toMatch(/^[A-Z0-9].*\.$/);
      expect(sentence).not.toMatch(/undefined|NaN|sloppy|bad|poor/);
    }
  });
});
