import { describe, expect, it } from 'vitest';
import { notate } from '../../../src/layout/notation/notate';
import { blankHands, crossedTask, missingTicks, withGaps } from '../../../src/layout/sheet/worksheet';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';
import { readChart } from '../../../src/music/chart/read';
import { alignment } from '../../../src/music/clave/alignment';
import { arrange, type Score } from '../../../src/music/score';

const scoreOf = (text: string, level: 1 | 2 | 3 = 2): Score => {
  const chart = readChart(text);
  if (!chart.ok) throw new Error(JSON.stringify(chart.faults));
  return arrange(chart.value, { level });
};
const DEMOS = DEMO_BOOK.map((demo) => [demo.title, demo.text] as const);

describe('missing notes', () => {
  it.each(DEMOS)('%s: what is left and what is asked for are together the score, note for note', (_, text) => {
    const score = scoreOf(text);
    const missing = missingTicks(score);
    const task = withGaps(notate(score), missing);
    for (const [staff, part] of [
      ['right', 'rightHand'],
      ['left', 'leftHand'],
    ] as const) {
      const struck = task.bars.flatMap((bar) =>
        bar.staves[staff].events
          .filter((event) => event.kind !== 'rest' && !event.tieIn)
          .map((event) => ({ tick: bar.tick + event.tick, midi: event.pitches.map((pitch) => pitch.midi), gap: event.kind === 'gap' })),
      );
      expect(struck.map(({ tick, midi }) => [tick, ...midi])).toEqual(score.parts[part].map((stroke) => [stroke.tick, ...stroke.midi]));
      expect(struck.filter(({ gap }) => gap).map(({ tick }) => tick)).toEqual(
        score.parts[part].filter((stroke) => missing.has(stroke.tick)).map((stroke) => stroke.tick),
      );
    }
  });
  it('asks for the strokes that take the next chord, tied continuations with them, and beams nothing that is gone', () => {
    const score = scoreOf(DEMO_BOOK[0]?.text ?? '');
    const early = score.parts.rightHand.filter((stroke) => stroke.leadTicks > 0);
    expect([...missingTicks(score)]).toEqual(early.map((stroke) => stroke.tick));
    for (const bar of withGaps(notate(score), missingTicks(score)).bars)
      for (const staff of ['right', 'left'] as const) {
        const { events, beams } = bar.staves[staff];
        expect(beams.flat().every((i) => events[i]?.kind === 'notes')).toBe(true);
        events.forEach((event, i) => {
          if (event.tieIn && i > 0) expect(event.kind).toBe(events[i - 1]?.kind);
        });
      }
  });
});

describe('empty staff', () => {
  it('takes both hands off and leaves clave, rhythm, chords and bass', () => {
    const notation = notate(scoreOf(DEMO_BOOK[0]?.text ?? ''));
    const blank = blankHands(notation);
    blank.bars.forEach((bar, i) => {
      const given = notation.bars[i];
      expect(bar).toEqual({ ...given, staves: { ...given?.staves, right: { events: [], beams: [] }, left: { events: [], beams: [] } } });
    });
  });
});

describe('find the crossed bars', () => {
  /** Rhythm of two bars of the task as sixteen steps. */
  const gridOf = (task: NonNullable<ReturnType<typeof crossedTask>>, at: number): boolean[] =>
    [at, at + 1].flatMap((b) => {
      const steps = task.notation.bars[b]?.staves.rhythm.events.filter((e) => e.kind === 'stroke' && !e.tieIn).map((e) => e.tick / 240);
      return Array.from({ length: 8 }, (_, step) => steps?.includes(step) ?? false);
    });

  it.each(DEMOS)('%s: in every line the answer, and nothing else, is crossed', (_, text) => {
    const score = scoreOf(text);
    const task = crossedTask(score, notate(score), 7);
    expect(task).not.toBeNull();
    if (!task) return;
    expect(task.notation.bars).toHaveLength(16);
    expect(task.answers.map((bar) => Math.floor(bar / 4))).toEqual([0, 1, 2, 3]);
    for (let at = 0; at < 16; at += 2)
      expect(alignment(gridOf(task, at), score.clave).verdict).toBe(task.answers.includes(at) ? 'crossed' : 'aligned');
  });
  it('is the same for the same seed and differs for others', () => {
    const score = scoreOf(DEMO_BOOK[0]?.text ?? '');
    const answers = (seed: number) => crossedTask(score, notate(score), seed)?.answers;
    expect(answers(3)).toEqual(answers(3));
    expect(new Set([0, 1, 2, 3, 4, 5].map((seed) => String(answers(seed)))).size).toBeGreaterThan(1);
  });
  it('is none where the figure says no direction', () => {
    const score = scoreOf('title: Six\nkey: Cm\nmeter: 6/8\n\n[A]\n| Cm | G7 | Fm | G7 ||\n');
    expect(crossedTask(score, notate(score), 0)).toBeNull();
    const neutral = scoreOf(DEMO_BOOK[0]?.text ?? '');
    const chart = readChart(DEMO_BOOK[0]?.text ?? '');
    const one = chart.ok ? arrange(chart.value, { level: 2, devices: ['one-bar-neutral'] }) : neutral;
    expect(crossedTask(one, notate(one), 0)).toBeNull();
  });
});
