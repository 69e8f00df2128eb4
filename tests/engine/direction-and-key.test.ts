import { describe, expect, it } from 'vitest';
import { arrange, type Score } from '../../src/music/score';
import type { Level } from '../../src/vocabulary';
import { chartOf, RECIPES, randomProgression } from './progressions';

/** Onsets of each bar of a part, as steps of the bar, first-time strokes left out. */
const onsetsByBar = (score: Score, part: string): string[] =>
  score.bars.map((bar) => {
    const { percussion, ...parts } = score.parts;
    const all: Readonly<Record<string, readonly { readonly tick: number; readonly firstPassOnly?: boolean }[]>> = {
      ...percussion,
      ...parts,
    };
    const strokes = all[part] ?? [];
    return strokes
      .filter((stroke) => !stroke.firstPassOnly && stroke.tick >= bar.tick && stroke.tick < bar.tick + bar.ticks)
      .map((stroke) => (stroke.tick - bar.tick) / 240)
      .join(' ');
  });

const exchanged = (bars: readonly string[]): string[] => bars.map((_, index) => bars[index % 2 === 0 ? index + 1 : index - 1] ?? '');

describe('E1: the other direction is the same loop entered on the other side', () => {
  const charts = [
    ...RECIPES.map(({ name, key, bars }) => `title: ${name}\nkey: ${key}\n${bars}`),
    ...Array.from({ length: 24 }, (_, index) => randomProgression(index + 1)),
  ];
  const LEVELS: readonly Level[] = [1, 2, 3, 4, 5, 6];
  it.each(LEVELS.flatMap((level) => (['son', 'rumba'] as const).map((kind) => [level, kind] as const)))(
    'level %i, %s: onsets of both hands, clave and percussion in 3-2 are those in 2-3 with the bars of each cycle exchanged',
    (level, kind) => {
      let compared = 0;
      for (const text of charts) {
        const chart = chartOf(text);
        const twoThree = arrange(chart, { level, kind, direction: '2-3' });
        // Where every chord must sound (levels 1 and 6), two chords a bar add strokes of their own to whatever cell lies there.
        if ((level === 1 || level === 6) && twoThree.bars.some((bar) => bar.chords.length > 1)) continue;
        compared++;
        same(twoThree, arrange(chart, { level, kind, direction: '3-2' }));
      }
      expect(compared).toBeGreaterThan(5);
    },
  );

  it('whatever the device, the hands and the style', () => {
    const chart = chartOf(charts[0] ?? '');
    for (const device of ['octave-up', 'octaves-only', 'one-bar-neutral', 'extra-note', 'double-notes', 'half-step-out'] as const)
      for (const hands of ['double', 'wide', 'tenths', 'contrary', 'right', 'left'] as const)
        for (const style of ['salsa', 'latin jazz', 'cha-cha-cha', 'bolero', 'guajira', 'songo']) {
          const options = { devices: [device], hands, style, level: 3 } as const;
          same(arrange(chart, { ...options, direction: '2-3' }), arrange(chart, { ...options, direction: '3-2' }));
        }
  });

  it('in 6/8 as well', () => {
    for (const bars of ['| Dm7 | G7 | Dm7 | G7 |', '| Gm | D7 | Cm6 | D7 |'])
      for (const level of LEVELS) {
        const chart = chartOf(`key: Dm\nmeter: 6/8\nclave: 2-3 bembe\n${bars}`);
        same(arrange(chart, { level, direction: '2-3' }), arrange(chart, { level, direction: '3-2' }));
      }
  });
});

/** Expects the onsets of every part to change places within each cycle, and the harmony to stay. */
function same(twoThree: Score, threeTwo: Score): void {
  for (const part of ['rightHand', 'leftHand', 'clave'] as const)
    expect(onsetsByBar(threeTwo, part)).toEqual(exchanged(onsetsByBar(twoThree, part)));
  expect(Object.keys(threeTwo.parts.percussion)).toEqual(Object.keys(twoThree.parts.percussion));
  for (const name of Object.keys(twoThree.parts.percussion))
    expect(onsetsByBar(threeTwo, name)).toEqual(exchanged(onsetsByBar(twoThree, name)));
  expect(threeTwo.bars.map((bar) => bar.chords.map(({ symbol }) => symbol))).toEqual(
    twoThree.bars.map((bar) => bar.chords.map(({ symbol }) => symbol)),
  );
}

describe('E7: transposing the chart transposes the figure', () => {
  const charts = [
    ...RECIPES.map(({ name, key, bars }) => `title: ${name}\nkey: ${key}\n${bars}`),
    ...Array.from({ length: 12 }, (_, index) => randomProgression(index + 500)),
  ];
  it.each([1, 2, 3, 4] as const)('level %i: by every interval, up to one octave for the whole figure', (level) => {
    for (const text of charts) {
      const chart = chartOf(text);
      const home = arrange(chart, { level });
      for (let semitones = 1; semitones < 12; semitones++) {
        const moved = arrange(chart, { level, transpose: semitones });
        for (const hand of ['rightHand', 'leftHand'] as const) {
          const shifts = new Set(
            moved.parts[hand].flatMap((stroke, index) =>
              stroke.midi.map((midi, note) => midi - (home.parts[hand][index]?.midi[note] ?? 0)),
            ),
          );
          expect(shifts.size, `${home.title} by ${semitones}: ${[...shifts]}`).toBe(1);
          expect([semitones, semitones - 12]).toContain([...shifts][0]);
        }
        expect(moved.parts.rightHand.map((stroke) => [stroke.tick, stroke.role, stroke.degrees])).toEqual(
          home.parts.rightHand.map((stroke) => [stroke.tick, stroke.role, stroke.degrees]),
        );
      }
    }
  });
});

describe('E14: the same input gives the same output, whatever ran before', () => {
  it('byte for byte, also from deep-frozen charts', () => {
    const texts = Array.from({ length: 20 }, (_, index) => randomProgression(index + 900));
    const once = texts.map((text) => JSON.stringify(arrange(frozen(chartOf(text)), { level: 4, seed: 3 }).parts));
    for (let seed = 0; seed < 5; seed++) arrange(chartOf(randomProgression(seed)), { level: 1, seed });
    const again = [...texts]
      .reverse()
      .map((text) => JSON.stringify(arrange(chartOf(text), { level: 4, seed: 3 }).parts))
      .reverse();
    expect(again).toEqual(once);
  });
});

function frozen<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const part of Object.values(value)) frozen(part);
  }
  return value;
}
