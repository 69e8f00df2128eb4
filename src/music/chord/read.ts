import { type Degree, failed, ok, type Result } from '../../vocabulary';
import { degreeName, degreeSemitones, pcOf } from '../pitch/spell';
import type { Chord, ChordFamily, ChordTone } from './chord';
import { corrections } from './corrections';
import { plainSymbol } from './signs';
import { readSuffix } from './suffix';

/** Why a chord symbol could not be read. */
export interface ChordFault {
  readonly code:
    | 'empty'
    | 'too long'
    | 'space'
    | 'no chord'
    | 'repeat sign'
    | 'lower-case root'
    | 'unknown root'
    | 'lower-case bass'
    | 'unknown bass'
    | 'missing bass'
    | 'unknown suffix';
  /** The offending part, as typed. */
  readonly text: string;
  /** What could stand there. */
  readonly expected: string;
  /** The nearest symbol that can be read, or null. */
  readonly nearest: string | null;
}

/** Longest symbol that is looked at. */
export const LONGEST_SYMBOL = 64;

const ROOT = /^[A-G](bb|##|b|#)?/;
const ROOTS = 'a root from A to G in capitals, with b or # if need be';
const CACHE_SIZE = 4096;
const cache = new Map<string, Result<Chord, ChordFault>>();

/**
 * Reads a chord symbol as typed on jazz and Latin charts: `Em7`, `B♭-7`, `D6/9`, `F#ø`, `CΔ7(#11)`, `A7alt`, `Gm7/C`.
 * Returns the chord, deep-frozen, or one fault with the offending part and, where there is one, a correction. N.C. is no chord: see `isNoChord`.
 * Symbols already seen are looked up in one step. Never throws.
 */
export function readChord(symbol: string): Result<Chord, ChordFault> {
  const known = cache.get(symbol);
  if (known) return known;
  const result = freshly(symbol);
  if (symbol.length > LONGEST_SYMBOL) return result;
  if (cache.size >= CACHE_SIZE) cache.clear();
  cache.set(symbol, result);
  return result;
}

/** Whether a symbol says that no chord is played: `N.C.`, `NC`, `N.C`. */
export const isNoChord = (symbol: string): boolean => /^n\.?c\.?$/i.test(symbol);

function freshly(symbol: string): Result<Chord, ChordFault> {
  const reading = parse(symbol);
  if (!('code' in reading)) return Object.freeze(ok(reading));
  return failed(Object.freeze({ ...reading, nearest: mendable(reading) ? nearestOf(symbol) : null }));
}

type BareFault = Omit<ChordFault, 'nearest'>;

const mendable = (fault: BareFault): boolean => !['empty', 'too long', 'no chord', 'repeat sign'].includes(fault.code);

function nearestOf(symbol: string): string | null {
  // A word of the part, such as hits or bars, is no mistyped chord.
  if (/^[a-z]{4,}$/.test(symbol) && !/^sol|maj|min|dim|aug|sus|alt/.test(symbol)) return null;
  for (const candidate of corrections(plainSymbol(symbol))) if (candidate !== symbol && !('code' in parse(candidate))) return candidate;
  return null;
}

function parse(symbol: string): Chord | BareFault {
  if (symbol === '') return { code: 'empty', text: '', expected: 'a chord symbol such as Em7' };
  if (symbol.length > LONGEST_SYMBOL)
    return { code: 'too long', text: symbol.slice(0, LONGEST_SYMBOL), expected: `a chord symbol of at most ${LONGEST_SYMBOL} characters` };
  if (isNoChord(symbol)) return { code: 'no chord', text: symbol, expected: 'a chord symbol' };
  if (/^%+$/.test(symbol)) return { code: 'repeat sign', text: symbol, expected: 'a chord symbol' };
  if (/\s/.test(symbol)) return { code: 'space', text: symbol, expected: 'a chord symbol without spaces inside' };
  const plain = plainSymbol(symbol);
  const root = ROOT.exec(plain)?.[0];
  if (root === undefined)
    return { code: /^[a-g]/.test(plain) ? 'lower-case root' : 'unknown root', text: firstSign(symbol), expected: ROOTS };
  const slash = bassSlash(plain, root.length);
  const bass = slash === null ? null : plain.slice(slash + 1);
  if (slash !== null && bass !== null && !/^[A-G](bb|##|b|#)?$/.test(bass)) {
    const code = bass === '' ? 'missing bass' : /^[a-g](bb|##|b|#)?$/.test(bass) ? 'lower-case bass' : 'unknown bass';
    return { code, text: symbol.slice(bass === '' ? slash : slash + 1), expected: 'a bass note from A to G in capitals after the slash' };
  }
  const end = slash ?? plain.length;
  const reading = readSuffix(plain.slice(root.length, end));
  if (!reading.ok) return { code: 'unknown suffix', text: symbol.slice(root.length + reading.at, end), expected: reading.expected };
  return chordOf(symbol, root, symbol.slice(root.length, end), bass, reading.degrees);
}

const firstSign = (symbol: string): string => String.fromCodePoint(symbol.codePointAt(0) ?? 0);

/** Index of the slash before a bass, or null; the slash of `6/9` or `7/b13` joins a degree and `m/maj7` a word. */
function bassSlash(plain: string, from: number): number | null {
  const slash = plain.lastIndexOf('/');
  if (slash < from) return null;
  return /^([b#+-]?\d|maj|Maj|M|\^|add|sus|alt|no|omit)/.test(plain.slice(slash + 1)) ? null : slash;
}

function chordOf(symbol: string, root: string, suffix: string, bass: string | null, degrees: readonly Degree[]): Chord {
  const tones = degrees.map(
    (degree): ChordTone => Object.freeze({ degree, semitones: degreeSemitones[degree], ...degreeName(root, degree) }),
  );
  const rootPc = pcOf(root);
  return Object.freeze({
    symbol,
    root,
    rootPc,
    suffix,
    bass,
    bassPc: bass === null ? rootPc : pcOf(bass),
    family: familyOf(degrees),
    tones: Object.freeze(tones),
  });
}

/** The family by third, fifth and seventh. A dominant without its third (`C11`, `C9sus`) is a sus chord. */
function familyOf(degrees: readonly Degree[]): ChordFamily {
  const has = (degree: Degree): boolean => degrees.includes(degree);
  if (has('3')) return has('b7') ? 'dominant' : has('#5') ? 'augmented' : 'major';
  if (!has('b3')) return has('4') || has('2') || has('11') ? 'sus' : has('b7') ? 'dominant' : 'power';
  if (has('b5')) return has('b7') ? 'half-diminished' : 'diminished';
  return has('7') ? 'minor-major' : 'minor';
}
