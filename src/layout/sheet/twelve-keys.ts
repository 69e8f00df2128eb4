import type { Key } from '../../music/chart/chart';

/** The twelve keys in falling fifths from C, spelled with the fewer accidentals (F sharp rather than G flat major). Circle of fifths, handbook knowledge. */
const MAJOR = ['C', 'F', 'Bb', 'Eb', 'Ab', 'Db', 'F#', 'B', 'E', 'A', 'D', 'G'] as const;
const MINOR = ['C', 'F', 'Bb', 'Eb', 'G#', 'C#', 'F#', 'B', 'E', 'A', 'D', 'G'] as const;

const SOUNDING: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
const pitchClass = (tonic: string): number =>
  ((SOUNDING[tonic.charAt(0)] ?? 0) + (tonic.endsWith('#') ? 1 : tonic.endsWith('b') ? -1 : 0) + 12) % 12;

/** All twelve keys of the mode, beginning with `key` itself, round the circle of fifths: the order in which a figure is carried through the keys. */
export function twelveKeys(key: Key): Key[] {
  const circle = key.mode === 'major' ? MAJOR : MINOR;
  const start = circle.findIndex((tonic) => pitchClass(tonic) === pitchClass(key.tonic));
  return circle.map((_, i) => {
    const tonic = circle[(start + i) % circle.length] ?? key.tonic;
    return { tonic: i === 0 ? key.tonic : tonic, mode: key.mode };
  });
}
