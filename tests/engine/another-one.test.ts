import { describe, expect, it } from 'vitest';
import { type ArrangeOptions, arrange } from '../../src/music/score';
import type { Level } from '../../src/vocabulary';
import { chartOf, RECIPES, randomProgression } from './progressions';

const LEVELS: readonly Level[] = [1, 2, 3, 4, 5, 6];

/** Cell and octave line of a figure: where it strikes, and the octave note on each chord, whatever octave that is in. */
function figureOf(text: string, options: ArrangeOptions): string {
  const { rightHand } = arrange(chartOf(text), options).parts;
  const cell = rightHand.map(({ tick, role }) => `${tick}${role}`).join(' ');
  const line = rightHand
    .filter(({ role }) => role !== 'inner' && role !== 'approach')
    .map(({ chord, midi }) => `${chord}${(midi[0] ?? 0) % 12}`);
  return `${cell} | ${line.join(' ')}`;
}
const offered = (text: string, options: ArrangeOptions): number =>
  new Set(Array.from({ length: 6 }, (_, seed) => figureOf(text, { ...options, seed }))).size;

const VAMPS = ['Cm', 'C', 'G7', 'Dm7', 'C6/9', 'Cdim7', 'Csus4'].map((symbol) => `title: vamp on ${symbol}\nkey: C\n| ${symbol} | % |`);
const PUBLISHED = [...RECIPES.map(({ name, key, bars }) => `title: ${name}\nkey: ${key}\n${bars}`), ...VAMPS];
const RANDOM = Array.from({ length: 8 }, (_, index) => randomProgression(8_000 + index, { bars: 4 }));

describe('“another one”', () => {
  it.each(['salsa', 'latin jazz', 'guajira'])(
    '%s: six presses give three figures or more that differ in octave line or cell, for every progression and level',
    (style) => {
      const few = [...PUBLISHED, ...RANDOM].flatMap((text) =>
        LEVELS.flatMap((level) => (offered(text, { level, style }) >= 3 ? [] : [`${text.split('\n')[0]} level ${level}`])),
      );
      expect(few).toEqual([]);
    },
  );

  it('with a rhythm that the player has fixed the octave line still changes: three lines for every published progression', () => {
    const few = RECIPES.flatMap(({ name, key, bars }) => {
      const text = `title: ${name}\nkey: ${key}\n${bars}`;
      const own = { ownFigure: { text: 'x.xx.x.x .x.xx.x.', direction: '2-3' } } as const;
      return [own, { cells: { two: 'A1', three: 'B1' } } as const, { devices: ['one-bar-neutral'] } as const].flatMap((fixed) =>
        offered(text, fixed) >= 3 ? [] : [`${name} ${JSON.stringify(fixed)}`],
      );
    });
    expect(few).toEqual([]);
  });
});
