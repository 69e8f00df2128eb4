import { describe, expect, it } from 'vitest';
import { articulationsOf } from '../../../src/layout/notation/articulation';
import { fingersFor } from '../../../src/layout/notation/fingering';
import { notate } from '../../../src/layout/notation/notate';
import { readChart } from '../../../src/music/chart/read';
import { arrange } from '../../../src/music/score';
import { LOOP_SCORE } from '../loop-score';

const chord = (...midi: number[]) => midi.map((note) => ({ midi: note }));

describe('fingersFor', () => {
  // Common practice, no source: octaves 1–5, 1–4 where the top is a black key; thirds and fourths 2–4; seconds 2–3; sixths 1–4.
  it.each([
    [[72, 84], [1, 5], 'octave on C'],
    [[73, 85], [1, 4], 'octave on D flat'],
    [[78, 90], [1, 4], 'octave on F sharp'],
    [[64, 67], [2, 4], 'minor third'],
    [[64, 68], [2, 4], 'major third'],
    [[62, 67], [2, 4], 'fourth'],
    [[65, 67], [2, 3], 'second'],
    [[64, 73], [1, 4], 'major sixth'],
    [[64], [], 'a single note'],
    [[60, 67, 72], [1, 3, 5], 'octave with a fifth inside'],
    [[60, 64, 67, 72], [1, 2, 3, 5], 'octave with two notes inside'],
  ])('%j takes %j: %s', (midi, fingers) => expect(fingersFor(chord(...midi), 'right')).toEqual(fingers));
  it('mirrors the left hand, whose fifth finger is at the bottom', () => {
    expect(fingersFor(chord(48, 60), 'left')).toEqual([5, 1]);
    expect(fingersFor(chord(49, 61), 'left')).toEqual([4, 1]);
    expect(fingersFor(chord(52, 55), 'left')).toEqual([4, 2]);
  });
});

describe('fingers on the page', () => {
  const printed = (fingering: 'none' | 'changes' | 'every note') =>
    notate(LOOP_SCORE, { fingering })
      .bars.flatMap((bar) => bar.staves.right.events)
      .filter((event) => event.fingers.length > 0);
  it('are none, only what changes, or all', () => {
    expect(printed('none')).toHaveLength(0);
    expect(printed('every note')).toHaveLength(LOOP_SCORE.parts.rightHand.filter((stroke) => stroke.midi.length > 1).length);
    expect(printed('changes').length).toBeGreaterThan(0);
    expect(printed('changes').length).toBeLessThan(printed('every note').length);
  });
  it('stand on the first part of a tied note alone, one for every note head', () => {
    for (const event of printed('every note')) {
      expect(event.tieIn).toBe(false);
      expect(event.fingers).toHaveLength(event.pitches.length);
    }
  });
});

describe('articulation', () => {
  const chart = readChart('title: Signs\nkey: C\nclave: 2-3 son\n\n[A]\n| C | G7 | C {1 2& 4&~} | >F ||\n');
  if (!chart.ok) throw new Error('the chart must be read');
  const score = arrange(chart.value, { level: 2 });
  const signs = notate(score).bars.map((bar) =>
    bar.staves.right.events.filter((event) => event.articulations.length > 0).map((event) => [event.tick / 240, ...event.articulations]),
  );
  it('accents 1 of the 2-side and the & of 4 (published: Keyboard Magazine 2017), where the figure is loudest', () => {
    expect(signs[0]).toEqual([
      [0, 'accent'],
      [7, 'accent'],
    ]);
    const loud = score.parts.rightHand.filter((s) => s.tick < 3840 && s.role === 'octave');
    const accented = loud.filter((s) => articulationsOf(s, { withBand: false, tied: true, fourFour: true }).includes('accent'));
    const others = loud.filter((s) => !accented.includes(s));
    expect(Math.min(...accented.map((s) => s.velocity))).toBeGreaterThan(Math.max(...others.map((s) => s.velocity)));
  });
  it('marks what the whole band strikes, hits and pushes alike', () => {
    const struck = signs.flatMap((bar, i) =>
      bar.filter((signsHere) => signsHere.includes('marcato')).map(([step]) => 8 * i + Number(step)),
    );
    // Hits on 1, & of 2 and & of 4 of bar 3; the push before bar 4 falls on that same & of 4.
    expect(struck).toEqual([16, 19, 23]);
  });
});
