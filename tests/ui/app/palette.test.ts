import { describe, expect, it } from 'vitest';
import { contrast, difference, type Palette, paletteOf, SIMULATIONS } from './palette';

const THEMES: Readonly<Record<string, Palette>> = {
  paper: paletteOf(':root {'),
  night: paletteOf(':root[data-theme="night"] {'),
};

/** Type on its grounds, as the screens use it: 4.5 to 1 (WCAG 2.2, 1.4.3). */
const TYPE: readonly (readonly [string, readonly string[]])[] = [
  ['ink', ['paper', 'sheet', 'two', 'two-head', 'three', 'hatch']],
  ['soft', ['paper', 'sheet', 'two', 'three']],
  ['sheet', ['ink', 'sea', 'bass', 'wood']],
  ['nowink', ['now']],
];
/** Marks and outlines that carry meaning: 3 to 1 (WCAG 2.2, 1.4.11). */
const MARKS: readonly (readonly [string, readonly string[]])[] = [
  ['wood', ['two', 'three', 'two-head', 'paper', 'sheet']],
  ['sea', ['two', 'three', 'paper', 'sheet']],
  ['bass', ['two', 'three']],
  ['now', ['two', 'three', 'paper', 'sheet']],
  ['edge', ['paper', 'sheet', 'two', 'three']],
];
/** Colours that stand for different things side by side. */
const APART: readonly (readonly [string, string])[] = [
  ['two', 'three'],
  ['two-head', 'three'],
  ['now', 'sea'],
  ['now', 'bass'],
  ['sea', 'wood'],
  ['wood', 'bass'],
];
/** ΔE*ab at which patches beside each other are told apart at a glance; our own figure, some four times the least that is noticed. */
const AT_A_GLANCE = 9;

const colour = (palette: Palette, name: string): string => {
  const value = palette[name];
  if (!value) throw new Error(`no colour --${name}`);
  return value;
};
const pairs = (rows: typeof TYPE) => rows.flatMap(([front, grounds]) => grounds.map((ground) => [front, ground] as const));

describe.each(Object.entries(THEMES))('The palette of %s', (name, palette) => {
  it.each(pairs(TYPE))('sets --%s on --%s in type that is read', (front, ground) => {
    expect(contrast(colour(palette, front), colour(palette, ground))).toBeGreaterThanOrEqual(4.5);
  });

  it.each(pairs(MARKS))('shows --%s on --%s', (front, ground) => {
    expect(contrast(colour(palette, front), colour(palette, ground))).toBeGreaterThanOrEqual(3);
  });

  it.each(Object.keys(SIMULATIONS) as (keyof typeof SIMULATIONS)[])('keeps apart what stands for different things, in %s', (seeing) => {
    const close = APART.filter(([one, other]) => difference(colour(palette, one), colour(palette, other), seeing) < AT_A_GLANCE);
    expect(close).toEqual([]);
  });

  it('shows the moment that sounds in greyscale too: its line and marks stand out from both sides', () => {
    for (const side of ['two', 'three']) expect(difference(colour(palette, 'now'), colour(palette, side), 'greyscale')).toBeGreaterThan(25);
  });

  it('sets every colour of the other theme', () => {
    const other = THEMES[name === 'paper' ? 'night' : 'paper'];
    expect(Object.keys(palette).sort()).toEqual(Object.keys(other ?? {}).sort());
  });
});

describe('The night of a device that prefers it', () => {
  it('is the night that is chosen', () => {
    expect(paletteOf(':root:not([data-theme="paper"]) {')).toEqual(THEMES.night);
  });
});

describe('The matrices of the simulations', () => {
  it('leave white white, as the paper has it', () => {
    for (const matrix of Object.values(SIMULATIONS))
      for (const row of matrix) expect(row.reduce((sum, value) => sum + value, 0)).toBeCloseTo(1, 5);
  });

  it('make red and green alike where a cone for them is missing', () => {
    expect(difference('#c04040', '#707030', 'deuteranopia')).toBeLessThan(difference('#c04040', '#707030', 'full colour') / 2);
  });

  it('agree with the ratios that WCAG gives for black, white and grey #767676 (21, and 4.54 as commonly cited)', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });
});
