import type { Chart } from '../../src/music/chart/chart';
import { readChart } from '../../src/music/chart/read';
import { seeded } from '../../src/practice/seeded';

export const ROOTS = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'] as const;
/** Qualities met on jazz and Latin charts. */
export const QUALITIES = [
  '',
  'm',
  '7',
  'm7',
  'maj7',
  '6',
  'm6',
  'm7b5',
  'dim7',
  '7b9',
  '7alt',
  '6/9',
  'sus4',
  '7sus4',
  '9',
  'm9',
  '13',
  'mMaj7',
  '7#5',
  'aug',
  'maj9',
  '7#9',
] as const;

const pick = <Item>(random: () => number, items: readonly Item[]): Item => items[Math.floor(random() * items.length)] as Item;

/** Chart text of a random progression: `bars` bars, one chord a bar or, with the given share, two. */
export function randomProgression(
  seed: number,
  options: { readonly bars?: number; readonly twoABar?: number; readonly qualities?: readonly string[] } = {},
): string {
  const random = seeded(seed);
  const { bars = 8, twoABar = 0.25, qualities = QUALITIES } = options;
  const chord = () => pick(random, ROOTS) + pick(random, qualities);
  const key = pick(random, ROOTS) + (random() < 0.4 ? 'm' : '');
  const written = Array.from({ length: bars }, () => (random() < twoABar ? `${chord()} ${chord()}` : chord()));
  return `title: Random ${seed}\nkey: ${key === 'Gbm' ? 'F#m' : key === 'Dbm' ? 'C#m' : key === 'Abm' ? 'G#m' : key}\n| ${written.join(' | ')} |`;
}

/** Reads chart text that must be sound. */
export function chartOf(text: string): Chart {
  const read = readChart(text);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}

/** Published and common progressions, in C or A minor, as chart rows (M. Levine, The Jazz Theory Book, 1995, for ii–V–I and chains; the loops are common practice). */
export const RECIPES: readonly { readonly name: string; readonly key: string; readonly bars: string }[] = [
  { name: 'ii–V–I', key: 'C', bars: '| Dm7 | G7 | Cmaj7 | % |' },
  { name: 'ii–V–I, two a bar', key: 'C', bars: '| Dm7 G7 | C6 | Dm7 G7 | C6 |' },
  { name: 'iiø–V–i', key: 'Cm', bars: '| Dm7b5 | G7b9 | Cm | % |' },
  { name: 'iiø–V–i, two a bar', key: 'Cm', bars: '| Dm7b5 G7b9 | Cm6 | Dm7b5 G7 | Cm |' },
  { name: 'I–IV–V–IV', key: 'C', bars: '| C F | G7 F | C F | G7 F |' },
  { name: 'I–IV–V–IV, one a bar', key: 'C', bars: '| C | F | G7 | F |' },
  { name: 'i–V7–V7–i', key: 'Cm', bars: '| Cm | G7 | G7 | Cm |' },
  { name: 'I–V7–V7–I', key: 'C', bars: '| C | G7 | G7 | C |' },
  { name: 'i–iv–V7', key: 'Cm', bars: '| Cm | Fm | G7 | % |' },
  { name: '♭VI–V7', key: 'Cm', bars: '| Ab7 | G7 | Ab7 | G7 |' },
  { name: 'i–♭VII–♭VI–V7', key: 'Cm', bars: '| Cm | Bb | Ab | G7 |' },
  { name: 'I7–IV7', key: 'C', bars: '| C7 | F7 | C7 | F7 |' },
  { name: 'I–vi–ii–V', key: 'C', bars: '| Cmaj7 A7 | Dm7 G7 | Em7 A7 | Dm7 G7 |' },
  { name: 'held minor', key: 'Cm', bars: '| Cm | % | % | % |' },
  { name: 'held major to IV', key: 'C', bars: '| C | % | F | % |' },
  { name: '6/9 vamp', key: 'C', bars: '| C6/9 | % |' },
  { name: 'Dorian vamp', key: 'Dm', bars: '| Dm7 | G9 | Dm7 | G9 |' },
  { name: 'dominant chain', key: 'C', bars: '| E7 | A7 | D7 | G7 |' },
  { name: 'passing diminished', key: 'C', bars: '| C6 C#dim7 | Dm7 G7 | C6 | G7sus4 G7 |' },
  { name: 'chords of one beat', key: 'C', bars: '| C Dm7 Em7 F | G7 | C / G7 C | F / / G7 |' },
];
