import { assert } from '../../vocabulary';
import { type Key, nameInKey, scaleOf, signature, transposeKey } from '../pitch/key';
import { fifthsOf, mod12, nameAtFifths, pcOf } from '../pitch/spell';
import type { Chord } from './chord';

/**
 * Transposing a symbol keeps what the root *is* in its key: ♯i° stays a sharpened tonic, ♭VI stays flat.
 *
 * Method: places on the line of fifths. The root's distance from the old tonic is added to the new tonic. The old tonic is the
 * customary one of its pitch, or its enharmonic twin where the root lies nearer to that. Names with two accidentals, and E#, B#, Cb, Fb outside the key's own
 * scale, give way to their plainer twins (Gb major keeps Cb; B♭ major gets B7, not Cb7). Common practice, no source.
 */

/** Places on the line of fifths between a note and its enharmonic twin. */
const TWIN = 12;
/** Gb to A#: the names without E#, B#, Cb, Fb and double accidentals. */
const PLAIN = { from: -6, to: 10 } as const;

/**
 * The symbol `semitones` higher (negative: lower) in the key `toKey`: root and bass respelled, the suffix exactly as typed; by whole octaves the symbol as typed.
 * A suffix that begins with an accidental is put in brackets, so that it does not join the new root: `F#b5` down six is `C(b5)`.
 * Example: `Em7` up three from D to F is `Gm7`; `A7/C#` down two to C is `G7/B`.
 */
export function transposeSymbol(chord: Chord, semitones: number, toKey: Key): string {
  assert(Number.isInteger(semitones), `chords move by whole semitones, got ${semitones}`);
  if (mod12(semitones) === 0) return chord.symbol;
  const root = transposeRoot(chord, semitones, toKey);
  const suffix = chord.suffix.replace(/^[b#♭♯]\d+/, '($&)');
  return `${root}${suffix}${chord.bass === null ? '' : `/${transposeBass(chord, chord.bass, root, semitones, toKey)}`}`;
}

function transposeRoot(chord: Chord, semitones: number, toKey: Key): string {
  const oldKey = transposeKey(toKey, -semitones);
  const place = fifthsOf(chord.root);
  const customary = fifthsOf(oldKey.tonic);
  const twin = [customary - TWIN, customary + TWIN].find(
    (tonic) => Math.abs(signature({ tonic: nameAtFifths(tonic), mode: oldKey.mode })) <= 7,
  );
  const tonic = twin !== undefined && Math.abs(place - twin) < Math.abs(place - customary) ? twin : customary;
  return plain(fifthsOf(toKey.tonic) + place - tonic, toKey);
}

/** The bass keeps its letter distance from the root (`A7/C#` becomes `Ab7/C`) unless that takes two accidentals. */
function transposeBass(chord: Chord, bass: string, root: string, semitones: number, toKey: Key): string {
  const name = nameAtFifths(fifthsOf(root) + fifthsOf(bass) - fifthsOf(chord.root));
  const typedTwice = /bb|##/.test(bass);
  return /bb|##/.test(name) && !typedTwice ? nameInKey(mod12(pcOf(bass) + semitones), toKey) : name;
}

function plain(place: number, key: Key): string {
  const inScale = scaleOf(key).some((name) => fifthsOf(name) === place);
  if (inScale) return nameAtFifths(place);
  let shown = place;
  while (shown > PLAIN.to) shown -= TWIN;
  while (shown < PLAIN.from) shown += TWIN;
  return nameAtFifths(shown);
}
