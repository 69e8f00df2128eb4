import type { Key } from '../pitch/key';
import { fifthsOf, nameAtFifths, pcOf, simplestName } from '../pitch/spell';

/** Place of each degree of the major scale on the line of fifths from its tonic (C D E F G A B from C). */
const MAJOR_FIFTHS = [0, 2, 4, -1, 1, 3, 5] as const;
/** How far the natural minor scale lowers a degree on that line: thirds, sixths and sevenths by a half step. */
const LOWERED = 7;
const ROMAN = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii'] as const;

/** Suffixes of degrees typed as figures, by the mode of the key: plain, with sevenths where salsa has them (common practice, no source). */
const PLAIN_SUFFIXES: Readonly<Record<Key['mode'], readonly string[]>> = {
  major: ['', 'm7', 'm7', '', '7', 'm7', 'm7b5'],
  minor: ['m', 'm7b5', '', 'm', '7', '', ''],
};

const DEGREE = /^([b#♭♯]?)(?:([1-7])|(VII|VI|IV|V|III|II|I|vii|vi|iv|v|iii|ii|i)((?:[\dø°ºoΔ∆△+(#b-]|m|M|dim|sus|aug|alt|add).*)?)$/u;

/** True for a word that could be a degree: `4`, `bVII`, `ii`, `V7`. */
export const looksLikeDegree = (word: string): boolean => DEGREE.test(word);

/** True for the minor tonic, `i`. */
export const isMinorTonic = (word: string): boolean => /^i(?![iv])/.test(word);

/**
 * The chord symbol of a degree in a key, or null for a word that is no degree. Figures take the chord of the scale (5 is a seventh
 * chord, 2 a minor seventh); roman numerals say major or minor by their case, and what follows is the chord's suffix (`V7`, `iiø`, `I6/9`).
 * In minor III, VI, VII, with or without a flat, are those of the natural scale; `vi` and `vii` are raised.
 * `degreeSymbol('ii', { tonic: 'Eb', mode: 'major' })` is `Fm7`.
 */
export function degreeSymbol(word: string, key: Key): string | null {
  const match = DEGREE.exec(word);
  if (!match) return null;
  const [, accidental = '', figure, roman = '', suffix = ''] = match;
  const degree = figure === undefined ? ROMAN.indexOf(roman.toLowerCase() as (typeof ROMAN)[number]) : Number(figure) - 1;
  const lower = figure === undefined && roman === roman.toLowerCase();
  const flat = accidental === 'b' || accidental === '♭';
  const natural = key.mode === 'minor' && [2, 5, 6].includes(degree) && !(lower && degree > 2);
  const lowered = (natural || flat ? LOWERED : 0) - (accidental !== '' && !flat ? LOWERED : 0);
  const root = spelled(fifthsOf(key.tonic) + (MAJOR_FIFTHS[degree] ?? 0) - lowered);
  if (figure !== undefined) return root + (PLAIN_SUFFIXES[key.mode][degree] ?? '');
  return root + (lower ? minorSuffix(suffix, degree, key.mode) : majorSuffix(suffix, degree, accidental !== '' || natural));
}

function spelled(place: number): string {
  const name = nameAtFifths(place);
  return /bb|##/.test(name) ? simplestName(pcOf(name), name.includes('b') ? 'flat' : 'sharp') : name;
}

/** A large numeral without a suffix is a triad on I, IV and on lowered or natural minor degrees, else a dominant seventh. */
function majorSuffix(suffix: string, degree: number, outside: boolean): string {
  if (suffix !== '') return suffix;
  return degree === 0 || degree === 3 || outside ? '' : '7';
}

function minorSuffix(suffix: string, degree: number, mode: Key['mode']): string {
  if (/^(ø|°|º|o|dim|m(?!aj)|-)/.test(suffix)) return suffix;
  if (suffix !== '') return /^(maj|M|Δ|∆|△)/.test(suffix) ? 'm(maj7)' : `m${suffix}`;
  if (degree === 6 || (degree === 1 && mode === 'minor') || (degree === 5 && mode === 'minor')) return 'm7b5';
  return degree === 0 || degree === 3 ? 'm' : 'm7';
}
