import type { Degree } from '../../vocabulary';
import { degreesOf, emptyRecipe, type Quality, type Recipe } from './recipe';

/**
 * What stands after a chord's root: from the many ways it is typed to the degrees it means.
 *
 * Method: `plainSymbol` replaces every printed sign by one ASCII sign of the same length, so that places in the text stay
 * true. The reader then takes one word after another (quality, number, sus, add, alteration …) and collects a `Recipe`,
 * from which the degrees follow.
 *
 * Choices where usage differs: `maj` alone and `°` alone are triads, `Δ` alone is a major seventh, `11` leaves out a major
 * third, `13` leaves out the 11th, `alt` is every altered tension and no natural fifth.
 */

/** The degrees of a suffix, or where it stops making sense (index into the suffix) and what could stand there. */
export type SuffixReading =
  | { readonly ok: true; readonly degrees: readonly Degree[] }
  | { readonly ok: false; readonly at: number; readonly expected: string };

/** Takes one word at the front of `rest`; returns its length, 0 if it is not this word, or what was expected instead. */
type Word = (rest: string, recipe: Recipe, place: Place) => number | string;
interface Place {
  readonly first: boolean;
  /** Inside brackets or behind a comma or slash, where a number adds a note instead of stacking thirds. */
  readonly listed: boolean;
}

const MAJOR_WORD = /^(major|maj|Major|Maj|MAJ|ma(?!dd|lt|ug)|Ma|MA|M(?!i|I|in|IN)|\^|j(?=\d))/;
const STACK = new Set([5, 6, 7, 9, 11, 13, 69]);
const SUFFIX = 'a chord suffix such as m7, maj7, 7b9, m7b5, dim7, 6/9 or sus4';

const QUALITIES: readonly (readonly [RegExp, Quality])[] = [
  [/^(minor|min|Min|MIN|mi|Mi|MI|m|-(?!5))/, 'minor'],
  [/^(dim|Dim|DIM|o(?!m))/, 'diminished'],
  [/^(ø|half-?dim|hdim)/, 'half-diminished'],
  [/^(aug|Aug|AUG|\+(?!5|11|13))/, 'augmented'],
  [/^dom(?=7|9|11|13)/, 'major'],
];

const quality: Word = (rest, recipe, { first }) => {
  if (!first) return 0;
  for (const [word, name] of MAJOR_WORD.test(rest) ? [] : QUALITIES) {
    const length = word.exec(rest)?.[0].length ?? 0;
    if (length > 0) {
      recipe.quality = name;
      recipe.said = true;
      return length;
    }
  }
  return 0;
};

/** `maj7`, `M9`, `Δ`: a major seventh, also behind a minor, diminished or augmented quality. */
const major: Word = (rest, recipe, { first }) => {
  const word = MAJOR_WORD.exec(rest)?.[0];
  if (word === undefined) return 0;
  const digits = /^(13|11|9|7)(?!\d)/.exec(rest.slice(word.length))?.[0] ?? '';
  if (recipe.majorSeventh || recipe.quality === 'half-diminished') return 'one seventh only';
  const seventhOnly = digits === '7' || (digits === '' && word === '^');
  // `m9(maj7)` raises the seventh; `dim7(maj7)` and `m6(maj7)` add it.
  if (recipe.quality === 'minor' && seventhOnly && (recipe.number === 9 || recipe.number === 11 || recipe.number === 13)) {
    recipe.majorSeventh = true;
    return word.length + digits.length;
  }
  if (seventhOnly && (recipe.number === 6 || (recipe.number === 7 && recipe.quality === 'diminished'))) {
    recipe.added.add('7');
    return word.length + digits.length;
  }
  if (!first && recipe.number !== null) return 'one number only';
  if (digits === '' && word !== '^') {
    if (!first) return 'maj7, maj9, maj11 or maj13';
    recipe.said = true;
    recipe.majorWord = true;
    return word.length;
  }
  recipe.said = true;
  // A triangle before a six stands for the major triad.
  if (digits === '' && rest.charAt(word.length) === '6') return word.length;
  recipe.majorSeventh = true;
  recipe.number = digits === '' ? 7 : (Number(digits) as 7 | 9 | 11 | 13);
  return word.length + digits.length;
};

const number: Word = (rest, recipe, { listed }) => {
  const digits = /^[1-9]\d*/.exec(rest)?.[0];
  if (digits === undefined) return 0;
  const value = Number(digits);
  if (listed && value !== 7) {
    const degree = ({ 6: '6', 9: '9', 11: '11', 13: '13' } as const)[value];
    if (degree === undefined) return 'one of 6, 9, 11, 13';
    recipe.added.add(degree);
    return digits.length;
  }
  if (recipe.number !== null) return 'one number only; further notes go in brackets';
  if (!STACK.has(value)) return value === 4 || value === 2 ? `sus${value} or add${value}` : 'one of 5, 6, 7, 9, 11, 13';
  if (value === 5 && recipe.said) return SUFFIX;
  recipe.number = value as NonNullable<Recipe['number']>;
  const trailing = value >= 7 && value <= 13 ? (/^(M|maj)(?![a-z\d])/.exec(rest.slice(digits.length))?.[0] ?? '') : '';
  if (trailing !== '' || (recipe.majorWord && value >= 7 && value <= 13)) recipe.majorSeventh = true;
  return digits.length + trailing.length;
};

const suspended: Word = (rest, recipe) => {
  const match = /^(?:sus|Sus|SUS)(24|42|2\/4|4\/2|2|4)?/.exec(rest);
  if (!match) return 0;
  for (const degree of ['2', '4'] as const) if ((match[1] ?? '4').includes(degree)) recipe.sus.add(degree);
  return match[0].length;
};

const added: Word = (rest, recipe) => {
  const match = /^(?:add|Add|ADD)([b#]?)(13|11|9|6|4|2)(?!\d)/.exec(rest);
  if (!match) return /^add/i.test(rest) ? 'add2, add4, add6, add9, add11 or add13' : 0;
  const name = `${match[1]}${match[2]}`;
  const degree = ({ '#4': '#11', b2: 'b9', '#2': '#9', '#6': null, '#13': null, b11: null, b4: null } as Record<string, Degree | null>)[
    name
  ];
  if (degree === null) return 'a note that chords take: b9, #9, #11 or b13';
  recipe.added.add(degree ?? (name as Degree));
  return match[0].length;
};

const ALTERED: Readonly<Record<string, Degree>> = {
  b5: 'b5',
  '-5': 'b5',
  '#5': '#5',
  '+5': '#5',
  b9: 'b9',
  '-9': 'b9',
  '#9': '#9',
  '+9': '#9',
  b10: '#9',
  '#11': '#11',
  '+11': '#11',
  '#4': '#11',
  '+4': '#11',
  b13: 'b13',
  '-13': 'b13',
  b6: 'b6',
};
const alteration: Word = (rest, recipe) => {
  const match = /^([b#+-])(13|11|10|[4-79])(?!\d)/.exec(rest);
  if (!match) return 0;
  if (/^[#+]7/.test(match[0]) && recipe.quality === 'minor' && recipe.number === null) {
    recipe.number = 7;
    recipe.majorSeventh = true;
    return match[0].length;
  }
  const degree = ALTERED[match[0]];
  if (degree === undefined) return 'b5, #5, b9, #9, #11 or b13';
  recipe.altered.add(degree);
  return match[0].length;
};

/** A plus or `aug` behind the number: `7+`, `maj7aug`. */
const raisedFifth: Word = (rest, recipe) => {
  const length = recipe.number === null ? 0 : (/^(aug|\+)(?=$|[(),])/.exec(rest)?.[0].length ?? 0);
  if (length > 0) recipe.altered.add('#5');
  return length;
};

const altWord: Word = (rest, recipe) => {
  const length = /^(altered|alt|Alt|ALT)/.exec(rest)?.[0].length ?? 0;
  if (length === 0) return 0;
  if (recipe.quality !== 'major' || recipe.majorSeventh || (recipe.number ?? 7) !== 7) return 'alt only on a dominant seventh';
  recipe.number = 7;
  recipe.alt = true;
  return length;
};

const left: Word = (rest, recipe) => {
  const match = /^(?:no|omit)(?:(3)(?:rd)?|(5)(?:th)?)/.exec(rest);
  if (!match) return 0;
  recipe.left.add(match[1] ? 3 : 5);
  return match[0].length;
};

const WORDS: readonly Word[] = [quality, suspended, added, altWord, left, major, alteration, raisedFifth, number];

/** Reads a suffix already passed through `plainSymbol`: `''` is the major triad, `m7b5` gives 1 b3 b5 b7. */
export function readSuffix(suffix: string): SuffixReading {
  const recipe = emptyRecipe();
  let bracket = false;
  let listed = false;
  let at = 0;
  while (at < suffix.length) {
    const sign = suffix.charAt(at);
    if (sign === '(' && !bracket && at + 1 < suffix.length) {
      bracket = true;
      listed = true;
      at += 1;
      continue;
    }
    if (sign === ')' && bracket && suffix.charAt(at - 1) !== '(') {
      bracket = false;
      listed = false;
      at += 1;
      continue;
    }
    if ((sign === ',' || sign === '/') && /[\dA-Za-zø^+)]/.test(suffix.charAt(at - 1)) && /[^(),/]/.test(suffix.charAt(at + 1))) {
      listed = true;
      at += 1;
      continue;
    }
    let taken: number | string = 0;
    for (const word of WORDS) {
      taken = word(suffix.slice(at), recipe, { first: at === 0, listed });
      if (taken !== 0) break;
    }
    if (typeof taken === 'string') return { ok: false, at, expected: taken };
    if (taken === 0) return { ok: false, at, expected: bracket ? 'b5, #5, b9, #9, #11, b13 … and a closing bracket' : SUFFIX };
    listed = bracket;
    at += taken;
  }
  if (bracket) return { ok: false, at: suffix.lastIndexOf('('), expected: 'a closing bracket' };
  const degrees = degreesOf(recipe);
  return typeof degrees === 'string' ? { ok: false, at: 0, expected: degrees } : { ok: true, degrees };
}
