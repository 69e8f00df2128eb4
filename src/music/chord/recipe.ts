import ChordType from '@tonaljs/chord-type';
import type { Degree } from '../../vocabulary';
import { degreeNumber, degreeSemitones } from '../pitch/spell';

/**
 * From what a suffix asks for to the degrees of the chord. The bare chord (triad, sixth, seventh) is looked up in tonal by
 * tonal's own name for it; extensions, suspensions, alterations and added notes are laid over it in that order.
 */

/** The triad a suffix names. */
export type Quality = 'major' | 'minor' | 'diminished' | 'half-diminished' | 'augmented';

/** What a suffix asks for, before it is turned into degrees. */
export interface Recipe {
  quality: Quality;
  /** The quality was typed (`maj`, `m`, `dom` …) rather than left out. */
  said: boolean;
  /** `maj` was typed without a number, so that a 7 still to come is a major seventh. */
  majorWord: boolean;
  /** The number that says how far thirds are stacked; 5 is the power chord, 69 six-nine. */
  number: 5 | 6 | 7 | 9 | 11 | 13 | 69 | null;
  majorSeventh: boolean;
  readonly sus: Set<Degree>;
  alt: boolean;
  readonly altered: Set<Degree>;
  readonly added: Set<Degree>;
  readonly left: Set<3 | 5>;
}

/** A recipe for the plain major triad, to be written into. */
export const emptyRecipe = (): Recipe => ({
  quality: 'major',
  said: false,
  majorWord: false,
  number: null,
  majorSeventh: false,
  sus: new Set(),
  alt: false,
  altered: new Set(),
  added: new Set(),
  left: new Set(),
});

/** tonal's name of the bare chord by quality: triad, sixth, seventh, major seventh. */
const BARE: Readonly<Record<Quality, readonly [string, string | null, string, string]>> = {
  major: ['M', '6', '7', 'maj7'],
  minor: ['m', 'm6', 'm7', 'mM7'],
  diminished: ['dim', null, 'dim7', 'dim'],
  'half-diminished': ['m7b5', null, 'm7b5', 'm7b5'],
  augmented: ['aug', null, '7#5', 'maj7#5'],
};
const INTERVAL_DEGREES: Readonly<Record<string, Degree>> = {
  '1P': '1',
  '3m': 'b3',
  '3M': '3',
  '5d': 'b5',
  '5P': '5',
  '5A': '#5',
  '6M': '6',
  '7d': 'bb7',
  '7m': 'b7',
  '7M': '7',
};

function bareDegrees(name: string): Degree[] {
  return ChordType.get(name).intervals.flatMap((interval) => INTERVAL_DEGREES[interval] ?? []);
}

/** Degrees of a recipe in ascending order of number, or what is wrong with it. */
export function degreesOf(recipe: Recipe): readonly Degree[] | string {
  const { number: stack, majorSeventh } = recipe;
  const column = stack === null || stack === 5 ? 0 : stack === 6 || stack === 69 ? 1 : majorSeventh ? 3 : 2;
  const name = BARE[recipe.quality][column];
  if (name === null) return 'a major or minor chord before a sixth';
  const degrees = new Set<Degree>(bareDegrees(name));
  const drop = (wanted: number): void => {
    for (const degree of degrees) if (degreeNumber(degree) === wanted) degrees.delete(degree);
  };
  // tonal has no name for the diminished triad with a major seventh.
  if (recipe.quality === 'diminished' && majorSeventh) degrees.add('7');
  if (stack === 5) degrees.delete('3');
  if (stack === 9 || stack === 11 || stack === 13 || stack === 69) degrees.add('9');
  if (stack === 11) degrees.add('11');
  if (stack === 13) degrees.add('13');
  // A natural 11 stands in for the major third of a dominant; published lists leave that third out.
  if (stack === 11 && recipe.quality === 'major' && !majorSeventh) degrees.delete('3');
  if (recipe.sus.size > 0) {
    drop(3);
    for (const degree of recipe.sus) degrees.add(degree);
    if (recipe.sus.has('4')) degrees.delete('11');
  }
  if (recipe.alt) {
    drop(5);
    for (const degree of ['b9', '#9', '#11', 'b13'] as const) degrees.add(degree);
  }
  const hasSeventh = [...degrees].some((degree) => degreeNumber(degree) === 7);
  for (const typed of recipe.altered) {
    const degree = typed === 'b6' && hasSeventh ? 'b13' : typed;
    const number = degreeNumber(degree);
    if (number === 5 && !recipe.alt) for (const plain of contradicted(recipe.quality)) degrees.delete(plain);
    if (number === 9) degrees.delete('9');
    if (number === 11) degrees.delete('11');
    if (number === 13) degrees.delete('13');
    if (number !== 5 || !recipe.alt) degrees.add(degree);
  }
  const fifths = [...degrees].filter((degree) => degreeNumber(degree) === 5);
  if (fifths.length > 1 && recipe.quality !== 'major' && recipe.quality !== 'minor') return 'one kind of fifth';
  if (recipe.alt && (['9', '13', '6'] as const).some((natural) => recipe.added.has(natural))) return 'altered tensions only with alt';
  for (const degree of recipe.added) degrees.add(degree === '6' && hasSeventh ? '13' : degree);
  for (const number of recipe.left) drop(number);
  return [...degrees].sort((a, b) => degreeNumber(a) - degreeNumber(b) || degreeSemitones[a] - degreeSemitones[b]);
}

/** The fifths that an altered fifth replaces. */
const contradicted = (quality: Quality): readonly Degree[] => (quality === 'major' || quality === 'minor' ? ['5'] : []);
