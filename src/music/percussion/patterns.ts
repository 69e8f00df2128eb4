// long because it is a table
import { assert, type Direction } from '../../vocabulary';

/*
 * The percussion grids, one row a pattern. Each is stored once, laid out FROM THE 3-SIDE (3-2 form), two sides apart by a
 * space; `.` is silence and every other letter is a kind of stroke named in `strokes`. The other direction is the same
 * cycle entered half way, so a part cannot come to lie on the wrong side.
 */

/** Every pattern by id, in the order of a score. */
export const PATTERN_IDS = [
  'cascara',
  'mambo bell',
  'cha-cha bell',
  '6/8 bell',
  'timbales low drum',
  'cha-cha left hand',
  '6/8 low drum',
  'abanico',
  'bongo bell',
  'martillo',
  'conga one drum',
  'conga clave-aligned',
  'conga two drums',
  'conga soft',
  'guiro',
  'maracas',
  'maracas on the beats',
] as const;
/** The id of a pattern. */
export type PatternId = (typeof PATTERN_IDS)[number];

/** What is struck: the names of the percussion parts in a score, in its order. */
export const PERCUSSION_INSTRUMENTS = [
  'cascara',
  'mambo bell',
  'cha-cha bell',
  'bell',
  'timbales',
  'bongo bell',
  'bongo',
  'conga',
  'guiro',
  'maracas',
] as const;
/** The name of a percussion part. */
export type PercussionInstrument = (typeof PERCUSSION_INSTRUMENTS)[number];

/** Who strikes it: one player has two hands, and a fill on one drum takes them from the others. */
export type PercussionPlayer = 'timbales' | 'bongo' | 'conga' | 'guiro' | 'maracas' | 'bell';

/** One percussion pattern. */
export interface PercussionPattern {
  readonly id: PatternId;
  readonly instrument: PercussionInstrument;
  readonly player: PercussionPlayer;
  /** Name as players write it. */
  readonly name: string;
  /** Steps in the cycle: 16 in 4/4, 12 in 6/8. */
  readonly cycle: 16 | 12;
  /** The cycle from the 3-side, sides apart: one letter a step. */
  readonly grid: string;
  /** Kind of stroke by letter. */
  readonly strokes: Readonly<Record<string, string>>;
  /** True when both sides are equal, so that it goes with either direction. */
  readonly neutral: boolean;
  /** True for a roll that fills the last bar before a section; `arrival` is struck on the section's first beat. */
  readonly fill: { readonly arrival: string } | null;
  readonly evidence: string;
}

/** What a row says; the rest follows from the grid. */
type Row = Omit<PercussionPattern, 'id' | 'cycle' | 'neutral' | 'fill'> & Partial<Pick<PercussionPattern, 'fill'>>;

const TIMBALES_SHEET = 'published: timbales pattern sheet ("Basic Patterns")';
const CONGA = 'published: Wikipedia "Conga", "Tumbao"';
const ACCENTED = { X: 'accent', x: 'plain' } as const;
const LOW_DRUM = { m: 'muffled', o: 'open' } as const;
const TUMBAO = { H: 'heel', T: 'toe', S: 'slap', O: 'open', U: 'open low' } as const;

const ROWS: Readonly<Record<PatternId, Row>> = {
  cascara: {
    instrument: 'cascara',
    player: 'timbales',
    name: 'cáscara',
    grid: 'X.xX.X.x X.X.xX.x',
    strokes: ACCENTED,
    evidence: TIMBALES_SHEET,
  },
  'mambo bell': {
    instrument: 'mambo bell',
    player: 'timbales',
    name: 'mambo bell',
    grid: '.xxxX.xx X.X.xxxX',
    strokes: ACCENTED,
    evidence: `${TIMBALES_SHEET}; its two opening quarters also in a mycongaplace.com forum post`,
  },
  'cha-cha bell': {
    instrument: 'cha-cha bell',
    player: 'timbales',
    name: 'cha-cha bell',
    grid: 'x.x.x.x. x.x.x.x.',
    strokes: ACCENTED,
    evidence: TIMBALES_SHEET,
  },
  '6/8 bell': {
    instrument: 'bell',
    player: 'bell',
    name: '6/8 bell',
    grid: 'x.x.xx .x.x.x',
    strokes: ACCENTED,
    evidence: TIMBALES_SHEET,
  },
  'timbales low drum': {
    instrument: 'timbales',
    player: 'timbales',
    name: 'timbales low drum',
    grid: '..m...o. ..m...o.',
    strokes: LOW_DRUM,
    evidence: TIMBALES_SHEET,
  },
  'cha-cha left hand': {
    instrument: 'timbales',
    player: 'timbales',
    name: 'cha-cha timbales, left hand',
    grid: '..mm..om ..mm..om',
    strokes: LOW_DRUM,
    evidence: TIMBALES_SHEET,
  },
  '6/8 low drum': {
    instrument: 'timbales',
    player: 'timbales',
    name: '6/8 low drum',
    grid: 'o..m.. o..m..',
    strokes: LOW_DRUM,
    evidence: TIMBALES_SHEET,
  },
  abanico: {
    instrument: 'timbales',
    player: 'timbales',
    name: 'abanico',
    grid: '...R..r. ....R.r.',
    strokes: { R: 'rimshot', r: 'roll' },
    fill: { arrival: 'accent' },
    evidence: TIMBALES_SHEET,
  },
  'bongo bell': {
    instrument: 'bongo bell',
    player: 'bongo',
    name: 'bongo bell (campana)',
    grid: 'X.xxX.xx X.xxX.xx',
    strokes: { X: 'mouth', x: 'neck' },
    evidence: 'common practice, no source; meets the mambo bell 10 times a cycle as a mycongaplace.com forum post counts',
  },
  martillo: {
    instrument: 'bongo',
    player: 'bongo',
    name: 'martillo',
    grid: 'MtftMtHf MtftMtHf',
    strokes: { M: 'accent', t: 'thumb', f: 'fingers', H: 'low' },
    evidence: 'published: bongomania.com; mycongaplace.com (they disagree on the accents; which finger plays what is from memory)',
  },
  'conga one drum': {
    instrument: 'conga',
    player: 'conga',
    name: 'conga tumbao, one drum',
    grid: 'HTSTHTOO HTSTHTOO',
    strokes: TUMBAO,
    evidence: CONGA,
  },
  'conga clave-aligned': {
    instrument: 'conga',
    player: 'conga',
    name: 'conga tumbao, one drum, with the clave',
    grid: 'HTSTHTOT HTSTHTOO',
    strokes: TUMBAO,
    evidence: `${CONGA}, in words: one open tone on beat 4 of the 3-side; that a toe stroke takes the place of the second is assumed`,
  },
  'conga two drums': {
    instrument: 'conga',
    player: 'conga',
    name: 'conga tumbao, two drums',
    grid: 'HTSUUTOO HTSTHTOO',
    strokes: TUMBAO,
    evidence: `${CONGA}, reconstructed from its row of hands`,
  },
  'conga soft': {
    instrument: 'conga',
    player: 'conga',
    name: 'conga tumbao, one drum, soft',
    grid: 'HTSTHTOO HTSTHTOO',
    strokes: { H: 'heel', T: 'toe', S: 'soft slap', O: 'soft open' },
    evidence: `${CONGA}; the soft touch is common practice, no source`,
  },
  guiro: {
    instrument: 'guiro',
    player: 'guiro',
    name: 'güiro',
    grid: 'L.ssL.ss L.ssL.ss',
    strokes: { L: 'long scrape', s: 'short scrape' },
    evidence: 'from memory',
  },
  maracas: {
    instrument: 'maracas',
    player: 'maracas',
    name: 'maracas',
    grid: 'xxxxxxxx xxxxxxxx',
    strokes: ACCENTED,
    evidence: 'from memory',
  },
  'maracas on the beats': {
    instrument: 'maracas',
    player: 'maracas',
    name: 'maracas on the beats',
    grid: 'x.x.x.x. x.x.x.x.',
    strokes: ACCENTED,
    evidence: 'common practice, no source: the four beats fit straight and swung rhythms alike',
  },
};

/** All patterns, in the order of `PATTERN_IDS`. */
export const PERCUSSION_PATTERNS: readonly PercussionPattern[] = PATTERN_IDS.map((id) => {
  const row = ROWS[id];
  const [three = '', two = ''] = row.grid.split(' ');
  assert(three.length === two.length && (three.length === 8 || three.length === 6), `${id} needs two sides of 8 or 6 steps: ${row.grid}`);
  return { ...row, id, cycle: three.length === 8 ? 16 : 12, neutral: three === two, fill: row.fill ?? null };
});

const BY_ID: ReadonlyMap<string, PercussionPattern> = new Map(PERCUSSION_PATTERNS.map((pattern) => [pattern.id, pattern]));

/** The pattern of an id. Throws on an id that is not in the table. */
export function percussionPattern(id: PatternId): PercussionPattern {
  const pattern = BY_ID.get(id);
  assert(pattern, `no percussion pattern ${id}`);
  return pattern;
}

/**
 * A pattern's letters as they sound in a direction, sides apart. Example: `percussionGrid(percussionPattern('conga two drums'), '2-3')`
 * is `HTSTHTOO HTSUUTOO`.
 */
export function percussionGrid(pattern: PercussionPattern, direction: Direction): string {
  const [three = '', two = ''] = pattern.grid.split(' ');
  return direction === '3-2' ? `${three} ${two}` : `${two} ${three}`;
}

/** The kind of stroke on a step counted from the start of the 3-side, or null where the pattern is silent. */
export function strokeOnStep(pattern: PercussionPattern, stepFromThreeSide: number): string | null {
  const half = pattern.cycle / 2;
  const letter = pattern.grid[stepFromThreeSide < half ? stepFromThreeSide : stepFromThreeSide + 1];
  return letter === undefined ? null : (pattern.strokes[letter] ?? null);
}
