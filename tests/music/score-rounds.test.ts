import { describe, expect, test } from 'vitest';
import { readChart } from '../../src/music/chart/read';
import { unfold } from '../../src/music/chart/unfold';
import { type ArrangeOptions, arrange, type Score } from '../../src/music/score';
import { roundOf, vampRanges } from '../../src/music/score-rounds';
import { seeded } from '../../src/practice/seeded';
import { assert, type BassStroke, LONGEST_LEAD_TICKS, type PianoStroke } from '../../src/vocabulary';
import { ROOTS } from '../engine/progressions';

function chartOf(text: string) {
  const reading = readChart(text);
  assert(reading.ok, 'the chart must be good');
  return reading.value;
}
const rangesOf = (text: string, closed = true) => vampRanges(unfold(chartOf(text), { loops: closed }), closed);

/** The whole form and its first vamp, going round. */
function held(text: string, options: ArrangeOptions = {}): { readonly whole: Score; readonly round: Score } {
  const chart = chartOf(text);
  const whole = arrange(chart, options);
  const range = vampRanges(whole.form, whole.closed)[0];
  assert(range, 'the chart must have a vamp');
  return { whole, round: roundOf(whole, arrange(chart, { ...options, range })) };
}

describe('the bars that go round in an open vamp', () => {
  test('are its one pass, or two where a pass is odd, so that the clave closes', () => {
    expect(rangesOf('[A]\n| D | G |\n[Coro, on cue]\n| A7 | D | G | A7 |\n[B]\n| D | D |')).toEqual([{ fromBar: 2, toBar: 6 }]);
    expect(rangesOf('[A]\n| D | G |\n[Coro, on cue]\n| A7 | D | G |\n[B]\n| D | D |')).toEqual([{ fromBar: 2, toBar: 8 }]);
  });

  test('are the last pass of a vamp that is played so many times at least', () => {
    expect(rangesOf('[A]\n| D | G |\n[Coro, x4, on cue]\n| A7 | D |\n[B]\n| D | D |')).toEqual([{ fromBar: 8, toBar: 10 }]);
  });

  test('come once for every time the form reaches them', () => {
    const text = '[A]\n| D | G |\n[Coro, on cue]\n| A7 | D |\nform: A, Coro, A, Coro';
    expect(rangesOf(text)).toEqual([
      { fromBar: 2, toBar: 4 },
      { fromBar: 6, toBar: 8 },
    ]);
  });

  test('are none where nothing is on cue, or where the whole form goes round anyway; a form played once holds its only section', () => {
    expect(rangesOf('[A]\n| D | G |')).toEqual([]);
    expect(rangesOf('[Coro, on cue]\n| D | G |')).toEqual([]);
    expect(rangesOf('[Coro, on cue]\n| D | G |', false)).toEqual([{ fromBar: 0, toBar: 2 }]);
  });

  test('are none for a vamp whose count would break the clave on every round', () => {
    expect(rangesOf('[A]\n| D | G | D |\n[Coro, x3, on cue]\n| (2/4) A7 |\n[B]\n| D | D |')).toEqual([]);
  });
});

const FERRY = 'key: D\n[A]\n| Em7 | A7 | D6 | B7b9 |\n[Coro, on cue]\n| D6 | G6 | A7 | Gm6 |\n[Mambo]\n| Bb7 | Eb6 | Bb7 | Eb6 |';

describe('one round of an open vamp', () => {
  test.each(['2-3', '3-2'] as const)(
    'is the vamp as it stands in the form, and leads back to its own first chord at the end, in %s',
    (direction) => {
      const { whole, round } = held(FERRY, { direction });
      const seam = round.toTick - LONGEST_LEAD_TICKS;
      expect([round.fromTick, round.toTick, round.closed]).toEqual([4 * 1920, 8 * 1920, true]);
      for (const part of ['rightHand', 'leftHand', 'bass'] as const) {
        const sounding = (score: Score) =>
          score.parts[part].filter(({ tick }) => tick >= round.fromTick && tick < seam).map(({ tick, midi, chord }) => [tick, midi, chord]);
        expect(sounding(round)).toEqual(sounding(whole));
        const ahead = (score: Score) =>
          (score.parts[part] as readonly (PianoStroke | BassStroke)[])
            .filter(({ tick, leadTicks }) => tick >= seam && tick < round.toTick && tick + leadTicks >= round.toTick)
            .map(({ chord }) => chord);
        expect(ahead(round).length).toBeGreaterThan(0);
        expect(ahead(round).every((chord) => chord === 'D6')).toBe(true);
        expect(ahead(whole).every((chord) => chord === 'Bb7')).toBe(true);
      }
    },
  );

  test('keeps the fill for when it is left, and the clave and percussion on their sides', () => {
    const text = FERRY.replace('[Coro, on cue]', '[Verse, on cue]');
    const { whole, round } = held(text);
    const rolls = ({ parts }: Score) =>
      (parts.percussion.timbales ?? []).filter(
        ({ tick, stroke }) => tick >= round.toTick - 1920 && tick < round.toTick && stroke === 'roll',
      );
    expect(rolls(whole)).toHaveLength(1);
    expect(rolls(round)).toEqual([]);
    const inVamp = whole.parts.clave.filter(({ tick }) => tick >= round.fromTick && tick < round.toTick);
    expect(round.parts.clave).toEqual(inVamp);
  });

  test('names every note in the octave in which it sounds', () => {
    const pitchOf = (name: string): number => {
      const [, letter = '', signs = '', octave = ''] = /^([A-G])([#b]*)(-?\d+)$/.exec(name) ?? [];
      const alterations = [...signs].reduce((sum, sign) => sum + (sign === '#' ? 1 : -1), 0);
      return 12 * (Number(octave) + 1) + ({ C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 }[letter] ?? Number.NaN) + alterations;
    };
    for (const { round } of randomVamps(40))
      for (const stroke of [...round.parts.rightHand, ...round.parts.leftHand, ...round.parts.bass])
        expect(stroke.names.map(pitchOf)).toEqual(stroke.midi);
  });

  test('goes into its last beat and round again without a leap that the form does not have: within an octave, 95 % within a sixth', () => {
    const leaps = randomVamps(150).flatMap(({ round }) => {
      const line = round.parts.rightHand.filter(({ role }) => role === 'octave');
      const low = ({ midi }: PianoStroke) => Math.min(...midi);
      const seam = line.findIndex(({ tick }) => tick >= round.toTick - LONGEST_LEAD_TICKS);
      const [before, here, last, first] = [line[seam - 1], line[seam], line.at(-1), line[0]];
      return before && here && last && first ? [Math.abs(low(here) - low(before)), Math.abs(low(first) - low(last))] : [];
    });
    leaps.sort((a, b) => a - b);
    expect(leaps.length).toBeGreaterThan(150);
    expect(leaps[Math.floor(leaps.length * 0.95)]).toBeLessThanOrEqual(9);
    expect(leaps.at(-1)).toBeLessThanOrEqual(12);
  });

  test('keeps the left hand under the right one', () => {
    for (const hands of ['double', 'wide', 'tenths', 'contrary'] as const)
      for (const { round } of randomVamps(25, { hands })) {
        const lowest = new Map(round.parts.rightHand.map(({ tick, midi }) => [tick, Math.min(...midi)]));
        for (const { tick, midi } of round.parts.leftHand) expect(Math.max(...midi)).toBeLessThan(lowest.get(tick) ?? 128);
      }
  });
});

/** Vamps of two or four bars between four random bars on either side; the same ones every time. */
function randomVamps(count: number, options: ArrangeOptions = {}): { readonly whole: Score; readonly round: Score }[] {
  const random = seeded(11);
  const pick = <Value>(values: readonly Value[]): Value => values[Math.floor(random() * values.length)] as Value;
  const bars = (length: number) =>
    `| ${Array.from({ length }, () => pick(ROOTS) + pick(['m7', '7', '6', 'maj7', 'm6', '7b9'])).join(' | ')} |`;
  return Array.from({ length: count }, () =>
    held(`key: D\n[A]\n${bars(4)}\n[Coro, on cue]\n${bars(pick([2, 4]))}\n[B]\n${bars(4)}`, {
      level: pick([1, 2, 3, 4, 5, 6]),
      ...options,
    }),
  );
}
