import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PULSE } from '../../src/layout/grid/percussion-choice';
import { DEMO_BOOK } from '../../src/music/chart/demo-book';
import { readQuickLine } from '../../src/music/chart/quick-line';
import { readChart } from '../../src/music/chart/read';
import { readChord } from '../../src/music/chord/read';
import { NAMED_ROWS } from '../../src/music/clave/named-rhythms';
import { readGrid } from '../../src/music/clave/read-grid';
import { PATTERN_IDS, PERCUSSION_INSTRUMENTS, percussionPattern } from '../../src/music/percussion/patterns';
import { pairChoices, percussionChoices, STYLE_CHOICES } from '../../src/state/choices';
import { faultSentence } from '../../src/words/fault';
import { GRID_WORDS } from '../../src/words/grid';
import { MUSIC_TEXTS } from '../../src/words/music-texts';
import { speak } from '../../src/words/speak';
import { BAD } from '../music/chart/bad-charts';

/** More that can be expected than the list of bad charts holds: chords, hits in 6/8, very long texts. */
const MORE = [
  '| C{',
  '| Cmaj7maj9 | Cm7b5maj7 | C7 9 | C79 | C7b5#5b7 | Cadd3 | Caddb4 | Cmaj8 | C7b8 | C(b9 | C7(x) | Cm7alt | C/h | C/x | Em 7 | c | 7 |',
  '| Cm7alt |',
  'meter: 6/8\n| C {9} |',
  'meter: 6/8\n| C F G |',
  'meter: 6/8\n| / C / |',
  'meter: 6/8\nfigure: x\n| C |',
  '| (2/4) C {3} |',
  '| (2/4) % |\n| (2/4) C F G |',
  '| C | % {1} {2} |',
  '| C | D | %% {1} |',
  '| C | rest 3 {1} |',
  '[A, x99]\n| C |',
  'form: A,,B\n[A]\n| C |',
  'key: Fbm\n| C |',
  'key: G# major\n| C |',
  'key:\n| C |',
  'tempo: 60\n| C |',
  'x'.repeat(300_000),
  `${'| C '.repeat(4000)}|`,
  '| H '.repeat(400),
  '[A, x64]\n|: C | D | E | F :| x16\n[B, x64]\n|: C | D | E | F :| x16\nform: A, A, B, B',
  `| ${'C'.repeat(90)} |`,
];
const QUICK = [
  '',
  'Em7 H7',
  '1 4 5 4 in H',
  '1 9 in D',
  'ii V I in',
  'C,,',
  'x'.repeat(400),
  '[A] C',
  '| |',
  'in D',
  '1 4 in',
  'Em7 A7 in D',
  ' ;',
];
const SYMBOLS = [
  '',
  '%',
  'N.C.',
  'C D',
  'x',
  'c7',
  'C/',
  'C/h',
  'Cfoo',
  'C7(b9',
  'C'.repeat(99),
  'C7maj7',
  'C13sus4add3',
  'Cadd',
  'Cø9maj7',
  'C6(b',
  'C7b12',
];

const expectations = (): ReadonlySet<string> =>
  new Set([
    ...[...BAD.map(([text]) => text), ...MORE].flatMap((text) => {
      const read = readChart(text);
      return read.ok ? [] : read.faults.map(({ expected }) => expected);
    }),
    ...QUICK.flatMap((line) => {
      const read = readQuickLine(line);
      return read.ok ? [] : read.faults.map(({ expected }) => expected);
    }),
    ...SYMBOLS.flatMap((symbol) => {
      const read = readChord(symbol);
      return read.ok ? [] : read.faults.map(({ expected }) => expected);
    }),
    ...['x.', 'xq', 'x.x.x.x.x'].flatMap((grid) => {
      const read = readGrid(grid);
      return read.ok ? [] : read.faults.map(({ expected }) => expected);
    }),
  ]);

/** Lists of what is typed into a chart, which every language types alike. */
const TYPED = /^(<[^>]*> ?)+$/;
/** English words that no Spanish sentence holds, unless they are typed into charts. */
const ENGLISH = /\b(the|or|for|of|each|bar|bars|one|with|before|after|such|from|only|note|where|must|and|this|that)\b/;

describe('What the music brings along', () => {
  beforeAll(() => speak('es'));
  afterAll(() => speak('en'));

  it('is expected in Spanish, whatever is wrong with a chart', () => {
    const all = expectations();
    expect(all.size).toBeGreaterThan(70);
    const left = [...all].filter(
      (text) =>
        !TYPED.test(text) && (MUSIC_TEXTS.expected(text) === text || ENGLISH.test(MUSIC_TEXTS.expected(text).replace('on the beat', ''))),
    );
    expect(left.map((text) => `${text.slice(0, 120)} => ${MUSIC_TEXTS.expected(text).slice(0, 120)}`)).toEqual([]);
  });

  it('says a fault whole, with its pieces in their places', () => {
    const read = readChart('tempo: 92\nkey: C\nkey: D\n| C F G |');
    expect(read.ok ? [] : read.faults.map(faultSentence)).toEqual([
      'Línea 1, columna 8, «92». Se esperaba: qué figura se cuenta: half = 92 (quarter = 184) o quarter = 92 (half = 46). Lo más cercano: «half = 92».',
      'Línea 3, columna 1, «key: D». Se esperaba: una sola línea «key:»; la primera está en la línea 2.',
      'Línea 4, columna 3, «C F G». Se esperaba: 1, 2 o 4 acordes en el compás, o una / por cada negra que mantiene el acorde anterior. Lo más cercano: «C / F G».',
    ]);
  });

  it('names every row of the percussion, and how each is struck', () => {
    const rows = [...PERCUSSION_INSTRUMENTS, PULSE].map((name) => GRID_WORDS.instrumentName(name));
    expect(rows.filter((name) => /bell|drum|pulse|bongo$/.test(name))).toEqual([]);
    const strokes = new Set(PATTERN_IDS.flatMap((id) => Object.values(percussionPattern(id).strokes)));
    const cell = { bar: 1, side: 2, count: '1', beat: '1', chord: null, clave: false, hit: false, right: [], left: [], bass: [] } as const;
    const said = [...strokes].map((stroke) =>
      GRID_WORDS.cell({ ...cell, percussion: [{ instrument: 'conga', stroke }] })
        .split(', ')
        .at(-1),
    );
    expect(
      said.filter((words) =>
        /\b(open|soft|slap|heel|toe|accent|muffled|mouth|neck|rimshot|roll|low|high|long|short|scrape|thumb|fingers?)\b/.test(words ?? ''),
      ),
    ).toEqual([]);
  });

  it('teaches, is known and is named in Spanish', () => {
    const same = (texts: readonly string[], say: (text: string) => string): readonly string[] => texts.filter((text) => say(text) === text);
    expect(
      same(
        DEMO_BOOK.map(({ teaches }) => teaches),
        MUSIC_TEXTS.teaches,
      ),
    ).toEqual([]);
    const evidence = [...STYLE_CHOICES, ...percussionChoices('4/4'), ...percussionChoices('6/8')].map((choice) => choice.evidence);
    expect(
      evidence.map(MUSIC_TEXTS.evidence).filter((said) => /\b(published|memory|practice|source|the|of|in words)\b/.test(said)),
    ).toEqual([]);
    // The same word in both languages.
    const known = ['cáscara', 'martillo', 'güiro', 'maracas', 'abanico'];
    const patterns = [...PATTERN_IDS.map((id) => percussionPattern(id).name), ...NAMED_ROWS.map(({ name }) => name)];
    expect(same([...new Set(patterns)], MUSIC_TEXTS.pattern).filter((name) => !known.includes(name))).toEqual([]);
    const pairs = [...pairChoices('son'), ...pairChoices('rumba')].map(({ what }) => what);
    expect(pairs.map(MUSIC_TEXTS.cells).filter((said) => /\b(standard|sparse|all|on|the|and|of)\b/.test(said))).toEqual([]);
    expect(MUSIC_TEXTS.cells('standard, reduced, ending on 4')).toBe('básica, reducida, acaba en el 4');
    expect(['cha-cha-cha', 'danzon', 'latin jazz', 'salsa'].map(MUSIC_TEXTS.style)).toEqual([
      'cha-cha-chá',
      'danzón',
      'jazz latino',
      'salsa',
    ]);
    expect((['aligned', 'neutral', 'crossed'] as const).map(MUSIC_TEXTS.verdict)).toEqual(['En clave', 'Neutro', 'Cruzado']);
  });
});
