import type { Key } from '../music/pitch/key';
import { keyName, signature, transposeKey } from '../music/pitch/key';
import { degreeName } from '../music/pitch/spell';
import { styleOf } from '../music/styles/styles';
import type { Degree } from '../vocabulary';
import { oneOf, seeded } from './seeded';

/*
 * Reading at sight: a fresh chart in a chosen style and difficulty, the same for the same seed. Half a minute to look, then play; the
 * answer stays hidden until it was played.
 *
 *   const text = freshChart({ seed: 12, style: 'salsa', difficulty: 2, title: 'Fresh chart 12' });   // readChart reads it
 */

/** 1: one chord a bar, easy keys. 2: ii–V–I and more keys. 3: two chords a bar. 4: a second section in another key, any key. */
export type ReadingDifficulty = 1 | 2 | 3 | 4;

/** A chord of a loop: degree of the key, and what stands after the root. */
type Sign = readonly [Degree, string];
/** Four bars, each of one or two chords. */
interface LoopRow {
  readonly mode: Key['mode'];
  readonly from: ReadingDifficulty;
  readonly bars: readonly (readonly Sign[])[];
  readonly source: string;
}

const COMMON = 'common practice, no source';
const one = (...signs: readonly Sign[]): readonly (readonly Sign[])[] => signs.map((sign) => [sign]);

/** The loops that charts are made of. Adding one is adding a row. */
export const READING_LOOPS: readonly LoopRow[] = [
  { mode: 'minor', from: 1, bars: one(['1', 'm'], ['5', '7'], ['5', '7'], ['1', 'm']), source: COMMON },
  { mode: 'minor', from: 1, bars: one(['1', 'm'], ['4', 'm'], ['5', '7'], ['1', 'm']), source: COMMON },
  { mode: 'minor', from: 1, bars: one(['1', 'm'], ['b7', ''], ['b6', ''], ['5', '7']), source: COMMON },
  { mode: 'major', from: 1, bars: one(['1', ''], ['5', '7'], ['5', '7'], ['1', '']), source: COMMON },
  { mode: 'major', from: 1, bars: one(['1', ''], ['4', ''], ['5', '7'], ['4', '']), source: COMMON },
  { mode: 'major', from: 2, bars: one(['2', 'm7'], ['5', '7'], ['1', '6'], ['6', '7b9']), source: COMMON },
  { mode: 'major', from: 2, bars: one(['1', '6'], ['6', '7b9'], ['2', 'm7'], ['5', '7']), source: COMMON },
  { mode: 'minor', from: 2, bars: one(['2', 'm7b5'], ['5', '7b9'], ['1', 'm6'], ['1', 'm6']), source: COMMON },
  { mode: 'minor', from: 2, bars: one(['b6', '7'], ['5', '7'], ['1', 'm'], ['1', 'm']), source: COMMON },
  {
    mode: 'major',
    from: 3,
    bars: [
      [
        ['1', '6'],
        ['6', '7b9'],
      ],
      [
        ['2', 'm7'],
        ['5', '7'],
      ],
      [
        ['3', 'm7'],
        ['6', '7b9'],
      ],
      [
        ['2', 'm7'],
        ['5', '7'],
      ],
    ],
    source: COMMON,
  },
  {
    mode: 'minor',
    from: 3,
    bars: [
      [['1', 'm']],
      [
        ['2', 'm7b5'],
        ['5', '7b9'],
      ],
      [
        ['1', 'm'],
        ['b7', '7'],
      ],
      [
        ['b6', 'maj7'],
        ['5', '7b9'],
      ],
    ],
    source: COMMON,
  },
];

/** Accidentals in the signature at most, by difficulty. */
const MOST_ACCIDENTALS: Readonly<Record<ReadingDifficulty, number>> = { 1: 2, 2: 3, 3: 4, 4: 6 };

/** Keys whose ii–V–I every handbook begins with: hands know it without reading. */
const WELL_KNOWN: readonly string[] = ['G', 'Bb'];

/** What a fresh chart is made from. */
export interface FreshChart {
  readonly seed: number;
  /** A style in 4/4 that is built on the clave. */
  readonly style: string;
  readonly difficulty: ReadingDifficulty;
  /** Its title; words are the caller's. */
  readonly title: string;
}

/** The text of a fresh chart: eight bars, sixteen at difficulty 4. */
export function freshChart({ seed, style, difficulty, title }: FreshChart): string {
  const random = seeded(seed * 31 + difficulty);
  const fitting = READING_LOOPS.filter(({ from }) => from <= difficulty && from >= difficulty - 2);
  const first = oneOf(fitting, random);
  const key = oneOf(keysFor(first.mode, difficulty), random);
  const second = oneOf(
    fitting.filter(({ mode }) => mode === first.mode),
    random,
  );
  const direction = oneOf(['2-3', '3-2'], random);
  const tempo = styleOf(style).tempo.usual - (4 - difficulty) * 4;
  const sections = `${section('A', first, key)}\n${rows(second, key)}`;
  const bridge = difficulty === 4 ? `\n${bridgeOf(key, fitting, random)}` : '';
  const head = [
    `title: ${title}`,
    `key: ${keyName(key)}`,
    `clave: ${direction} son`,
    `tempo: half = ${Math.max(40, tempo)}`,
    `style: ${style}`,
  ];
  return `${head.join('\n')}\n\n${sections}\n${bridge}`;
}

/** A second section a fourth up, or a minor third, in the same mode. */
function bridgeOf(key: Key, fitting: readonly LoopRow[], random: () => number): string {
  const away = transposeKey(
    key,
    oneOf(
      [5, 3].filter((semitones) => !WELL_KNOWN.includes(transposeKey(key, semitones).tonic)),
      random,
    ),
  );
  const [first, second] = [0, 1].map(() =>
    oneOf(
      fitting.filter(({ mode }) => mode === key.mode),
      random,
    ),
  );
  return first && second ? `${section('B', first, away)}\n${rows(second, away)}\n` : '';
}

const section = (name: string, loop: LoopRow, key: Key): string => `[${name}]\n${rows(loop, key)}`;

const rows = ({ bars }: LoopRow, key: Key): string =>
  `| ${bars.map((signs) => signs.map((sign) => chordIn(key, sign)).join(' ')).join(' | ')} |`;

const chordIn = (key: Key, [degree, suffix]: Sign): string => `${degreeName(key.tonic, degree).name}${suffix}`;

function keysFor(mode: Key['mode'], difficulty: ReadingDifficulty): Key[] {
  const start: Key = { tonic: 'C', mode };
  const all = Array.from({ length: 12 }, (_, semitones) => transposeKey(start, semitones));
  return all.filter((key) => Math.abs(signature(key)) <= MOST_ACCIDENTALS[difficulty] && !WELL_KNOWN.includes(key.tonic));
}
