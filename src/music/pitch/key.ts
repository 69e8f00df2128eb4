import { assert, failed, ok, type Result } from '../../vocabulary';
import { fifthsOf, mod12, nameAtFifths, pcOf, simplestName } from './spell';

/** A key as written: `D`, `Dm`, `Bb`. */
export interface Key {
  /** Spelled, ASCII. */
  readonly tonic: string;
  readonly mode: 'major' | 'minor';
}

/** Why a key could not be read. */
export interface KeyFault {
  readonly code: 'empty key' | 'lower-case key' | 'unknown key' | 'too many accidentals';
  /** The offending text, as typed. */
  readonly text: string;
  readonly expected: string;
  /** The nearest key that can be read, or null. */
  readonly nearest: string | null;
}

const EXPECTED = 'a key such as D, Dm, Bb or F# minor';

/**
 * The customary one of two enharmonic keys for each pitch class of the tonic, from C.
 * Rule: the signature with fewer accidentals; of the two with six, Gb major and Eb minor. Common practice, no source.
 */
const CUSTOMARY = {
  major: ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'],
  minor: ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'G#', 'A', 'Bb', 'B'],
} as const;

/**
 * Reads a key as typed: `D`, `Dm`, `Bb`, `F#m`, `E♭`, `D minor`, `D major`, `Dmin`.
 * Keys with more than seven accidentals in their signature are faults that offer the customary twin (`G#` offers `Ab`).
 */
export function readKey(text: string): Result<Key, KeyFault> {
  const plain = text.replaceAll('♭', 'b').replaceAll('♯', '#').trim();
  if (plain === '') return failed({ code: 'empty key', text, expected: EXPECTED, nearest: null });
  const match = /^([A-G])([#b]?)\s*(m|-|mi|[Mm]in|[Mm]inor|M|[Mm]aj|[Mm]ajor)?$/.exec(plain);
  if (!match) return failed(unreadable(text, plain));
  const minor = /^(m|-|mi|min|minor|Min|Minor)$/.test(match[3] ?? '');
  const key: Key = { tonic: `${match[1]}${match[2]}`, mode: minor ? 'minor' : 'major' };
  if (Math.abs(signature(key)) <= 7) return ok(key);
  return failed({
    code: 'too many accidentals',
    text,
    expected: 'a key with at most seven sharps or flats',
    nearest: keyName(customaryKey(pcOf(key.tonic), key.mode)),
  });
}

function unreadable(text: string, plain: string): KeyFault {
  const start = /^([A-Ha-h])([#b]?)\s*(.*)$/.exec(plain);
  if (!start) return { code: 'unknown key', text, expected: EXPECTED, nearest: null };
  const letter = (start[1] ?? '').toUpperCase();
  const rest = (start[3] ?? '').toLowerCase();
  const minor = /^(m(?!a)|-|dor|aeol|phryg|loc)/.test(rest);
  const repaired = readKey(`${letter === 'H' ? 'B' : letter}${start[2] ?? ''}${minor ? 'm' : ''}`);
  const nearest = repaired.ok ? keyName(repaired.value) : (repaired.faults[0]?.nearest ?? null);
  return { code: /^[a-g]/.test(plain) ? 'lower-case key' : 'unknown key', text, expected: EXPECTED, nearest };
}

/** A key as it is typed: `Bb`, `F#m`. */
export const keyName = (key: Key): string => key.tonic + (key.mode === 'minor' ? 'm' : '');

/**
 * Sharps (positive) or flats (negative) in the signature: D 2, Bb -2, Cm -3.
 * Circle of fifths, sign as in MusicXML 4.0 `fifths`. -7 to 7 for every key that `readKey` accepts.
 */
export const signature = (key: Key): number => fifthsOf(key.tonic) - (key.mode === 'minor' ? 3 : 0);

/** The seven notes of the key from its tonic: the major scale, or the natural minor scale. */
export function scaleOf(key: Key): readonly string[] {
  const tonic = fifthsOf(key.tonic);
  const steps = key.mode === 'major' ? [0, 2, 4, -1, 1, 3, 5] : [0, 2, -3, -1, 1, -4, -2];
  return steps.map((step) => nameAtFifths(tonic + step));
}

/** Pitch classes of `scaleOf(key)`, in the order of the scale. */
export const diatonicPcs = (key: Key): ReadonlySet<number> => new Set(scaleOf(key).map(pcOf));

/** The key customarily used for a tonic of this pitch class: 8 is Ab major but G# minor. */
export function customaryKey(pc: number, mode: Key['mode']): Key {
  const tonic = CUSTOMARY[mode][mod12(pc)];
  assert(tonic, `a pitch class is a whole number, got ${pc}`);
  return { tonic, mode };
}

/** The key `semitones` higher (negative: lower), the customary one of two enharmonic keys; whole octaves leave the key as it is. */
export function transposeKey(key: Key, semitones: number): Key {
  assert(Number.isInteger(semitones), `keys move by whole semitones, got ${semitones}`);
  return mod12(semitones) === 0 ? key : customaryKey(pcOf(key.tonic) + semitones, key.mode);
}

/** Spells a pitch class in a key: as in its scale, otherwise with the accidental its signature uses (flats in C and Am). */
export function nameInKey(pc: number, key: Key): string {
  const inScale = scaleOf(key).find((name) => pcOf(name) === mod12(pc));
  return inScale ?? simplestName(pc, signature(key) > 0 ? 'sharp' : 'flat');
}
