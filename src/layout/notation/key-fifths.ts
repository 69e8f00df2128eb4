import type { Key } from '../../music/chart/chart';
import { assert } from '../../vocabulary';

/** The tonics of major keys from seven flats to seven sharps; minor keys stand three fifths further on. Circle of fifths, general handbook knowledge. */
const MAJOR = ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#', 'G#', 'D#', 'A#'];

/**
 * Sharps (positive) or flats (negative) of a key: D is 2, B♭ minor −5. A key that would need more than seven is written with the
 * signature of its neighbour on the keyboard (G♯ major as A♭). Throws for a tonic that is no note name.
 */
export function keyFifths(key: Key): number {
  const place = MAJOR.indexOf(key.tonic);
  const fifths = place >= 0 ? place - 7 - (key.mode === 'minor' ? 3 : 0) : null;
  assert(fifths !== null || key.tonic === 'Fb', `no key signature for ${key.tonic} ${key.mode}`);
  const wanted = fifths ?? (key.mode === 'minor' ? -11 : -8);
  return wanted > 7 ? wanted - 12 : wanted < -7 ? wanted + 12 : wanted;
}
