import type { Chord } from '../chord/chord';
import { customaryKey, diatonicPcs, type Key } from '../pitch/key';

const MINOR_FAMILIES: ReadonlySet<Chord['family']> = new Set(['minor', 'minor-major']);
const MAJOR_FAMILIES: ReadonlySet<Chord['family']> = new Set(['major']);

const KEYS: readonly Key[] = (['major', 'minor'] as const).flatMap((mode) => Array.from({ length: 12 }, (_, pc) => customaryKey(pc, mode)));

/**
 * The key that a loop of chords is most likely in: the one whose scale holds most chord tones (the leading tone counts in minor),
 * with credit for a tonic chord, for a dominant that falls to it, and for beginning or ending on it. C when there is no chord.
 * A rule of thumb of this program, no source. `Em7 A7 D6 B7b9` is in D.
 */
export function likelyKey(chords: readonly Chord[]): Key {
  let best: Key = { tonic: 'C', mode: 'major' };
  let bestScore = 0;
  for (const key of KEYS) {
    const score = scoreOf(key, chords);
    if (score > bestScore + 1e-9) {
      best = key;
      bestScore = score;
    }
  }
  return best;
}

function scoreOf(key: Key, chords: readonly Chord[]): number {
  const scale = new Set(diatonicPcs(key));
  const tonic = [...diatonicPcs(key)][0] ?? 0;
  if (key.mode === 'minor') scale.add((tonic + 11) % 12);
  const families = key.mode === 'minor' ? MINOR_FAMILIES : MAJOR_FAMILIES;
  // A minor chord before the dominant a fourth above it is a ii, whatever came before it.
  const isTwo = (at: number): boolean =>
    key.mode === 'minor' &&
    chords[(at + 1) % chords.length]?.family === 'dominant' &&
    chords[(at + 1) % chords.length]?.rootPc === (tonic + 5) % 12;
  const isTonic = (at: number): boolean => chords[at]?.rootPc === tonic && families.has(chords[at].family) && !isTwo(at);
  // A major triad on the fifth may as well be a tonic with its IV after it.
  const pull = (chord: Chord): number => {
    if (chord.rootPc !== (tonic + 7) % 12) return 0;
    return chord.family === 'dominant' ? 0.75 : chord.family === 'major' ? 0.25 : 0;
  };
  let score = 0;
  for (const chord of chords) score += chord.tones.filter(({ pc }) => scale.has(pc)).length / chord.tones.length;
  const places = chords.map((_, at) => at);
  if (places.some(isTonic)) score += 1;
  score += Math.max(0, ...chords.map((chord, at) => (isTonic((at + 1) % chords.length) ? pull(chord) : 0)));
  if (isTonic(0)) score += 0.5;
  if (isTonic(chords.length - 1)) score += 0.25;
  return score;
}
