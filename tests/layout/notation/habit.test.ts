import { describe, expect, it } from 'vitest';
import { notate } from '../../../src/layout/notation/notate';
import type { NotatedEvent, NoteValue } from '../../../src/layout/notation/notation';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';
import { readChart } from '../../../src/music/chart/read';
import { arrange, type Score } from '../../../src/music/score';
import { LOOP_SCORE } from '../loop-score';

/** Lengths of note values in ticks of 480 to the quarter: arithmetic of notation. */
const LENGTHS: Readonly<Record<NoteValue['shape'], number>> = {
  whole: 1920,
  half: 960,
  quarter: 480,
  eighth: 240,
  sixteenth: 120,
  'thirty-second': 60,
};
const length = (event: NotatedEvent, bar: number): number =>
  event.wholeBar ? bar : (LENGTHS[event.value.shape] * (event.value.dots === 1 ? 3 : 2)) / 2;
const scoreOf = (text: string): Score => {
  const chart = readChart(text);
  if (!chart.ok) throw new Error('the chart must be read');
  return arrange(chart.value, { level: 2 });
};
const STAVES = ['clave', 'rhythm', 'right', 'left', 'bass'] as const;

describe('the sixteenth-note habit', () => {
  it.each(DEMO_BOOK.map((demo) => [demo.title, demo.text]))(
    '%s: values of every staff sum to the bar, half of what they are in eighths',
    (_, text) => {
      const score = scoreOf(text);
      const written = notate(score, { habit: 'sixteenths' });
      expect(written.bars.reduce((sum, bar) => sum + bar.ticks, 0)).toBe(score.toTick);
      for (const bar of written.bars) {
        for (const staff of STAVES) {
          const sum = bar.staves[staff].events.reduce((total, event) => total + length(event, bar.ticks / 2), 0);
          expect(sum, `bar ${bar.index} ${staff}`).toBe(bar.ticks / 2);
        }
      }
    },
  );

  it('writes one bar for a clave cycle: the same notes at the same ticks, sixteen sixteenths', () => {
    const eighths = notate(LOOP_SCORE);
    const sixteenths = notate(LOOP_SCORE, { habit: 'sixteenths' });
    expect(sixteenths.bars.map(({ index, count, ticks }) => [index, count, ticks])).toEqual([
      [0, 2, 3840],
      [2, 2, 3840],
    ]);
    expect(sixteenths.bars[0]?.meter).toEqual({ kind: 'fraction', beats: 4, unit: 4 });
    expect(sixteenths.bars[0]?.sides).toEqual([
      { tick: 0, side: 2 },
      { tick: 1920, side: 3 },
    ]);
    const onsets = (notation: typeof eighths) =>
      notation.bars.flatMap((bar) =>
        bar.staves.right.events
          .filter((event) => event.kind === 'notes' && !event.tieIn)
          .map((event) => [bar.tick + event.tick, ...event.pitches.map((pitch) => pitch.midi)]),
      );
    expect(onsets(sixteenths)).toEqual(onsets(eighths));
  });

  it('writes son clave as handbooks write it in one bar: 3-2 as ♪. ♪. ♪ | rest ♪ ♪ rest in sixteenths', () => {
    // 3-2 son in one bar of 4/4, strokes on sixteenths 0, 3, 6, 10, 12 (published: Wikipedia, "Clave (rhythm)").
    const score = scoreOf('title: One bar\nkey: C\nclave: 3-2 son\n\n[A]\n| C | G7 ||\n');
    const [bar] = notate(score, { habit: 'sixteenths' }).bars;
    expect(bar?.staves.clave.events.filter((e) => e.kind === 'stroke' && !e.tieIn).map((e) => e.tick / 240)).toEqual([0, 3, 6, 10, 12]);
    expect(bar?.counts.map((count) => count.text).join(' ')).toBe('1 e & a 2 e & a 3 e & a 4 e & a');
  });

  it('beams inside a quarter and ties over it', () => {
    for (const bar of notate(LOOP_SCORE, { habit: 'sixteenths' }).bars)
      for (const event of bar.staves.right.events.filter((e) => e.kind === 'notes' && length(e, 0) < 480)) {
        const first = Math.floor(event.tick / 960);
        const last = Math.floor((event.tick + event.ticks - 1) / 960);
        expect(last, `a short note at ${event.tick} stays in its quarter`).toBe(first);
      }
  });

  it('gives what makes no whole cycle a bar of its own: an odd section, a short bar', () => {
    const score = scoreOf('title: Odd\nkey: C\nclave: 2-3 son\n\n[A]\n| C | G7 | C ||\n\n[B]\n| F | C | (2/4) G7 ||\n\nform: A, B\n');
    const written = notate(score, { habit: 'sixteenths' });
    const shown = written.bars.slice(0, 5).map((bar) => [bar.index, bar.count, bar.meter.kind === 'fraction' && bar.meter.beats]);
    expect(shown).toEqual([
      [0, 2, 4],
      [2, 1, 2],
      [3, 1, 2],
      [4, 1, 2],
      [5, 1, 1],
    ]);
  });

  it('joins the bars of 6/8 into twelve eighths and halves nothing', () => {
    const score = scoreOf('title: Six\nkey: Cm\nmeter: 6/8\n\n[A]\n| Cm | G7 | Fm | G7 ||\n');
    const written = notate(score, { habit: 'sixteenths' });
    expect(written.scale).toBe(1);
    expect(written.bars[0]?.meter).toEqual({ kind: 'fraction', beats: 12, unit: 8 });
    for (const bar of written.bars)
      for (const staff of STAVES) expect(bar.staves[staff].events.reduce((sum, e) => sum + length(e, bar.ticks), 0)).toBe(bar.ticks);
  });
});
