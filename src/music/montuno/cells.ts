import type { ClaveKind, Level, Side } from '../../vocabulary';

/**
 * Cells: one bar of montuno rhythm with roles, for one side of the clave. Adding a cell is adding a row.
 *
 * `O` octave · `i` inner notes · `c` both at once · `a` approach into the octave that follows · `.` nothing.
 * Sources are those of the practice literature as far as they could be read; `evidence` says how far.
 */
export interface Cell {
  readonly id: string;
  readonly side: Side;
  /** One character a step: 8 in 4/4, 6 in 6/8. */
  readonly roles: string;
  readonly name: string;
  readonly evidence: string;
}

const COMMON = 'common practice, no source';

export const CELLS = [
  {
    id: 'A1',
    side: 2,
    roles: 'O.iO.i.O',
    name: 'standard',
    evidence: 'principle: Keyboard Magazine, “Playing in Clave”, 2017; grid: common practice',
  },
  { id: 'A2', side: 2, roles: 'OiiO.i.O', name: 'arpeggiated start', evidence: 'idea: Keyboard Magazine, 2017; grid from memory' },
  { id: 'A3', side: 2, roles: 'O.iO.iaO', name: 'pickup on 4', evidence: 'from memory' },
  { id: 'A6', side: 2, roles: 'c......c', name: 'sparse', evidence: 'accents: Keyboard Magazine, 2017; grid computed' },
  { id: 'B1', side: 3, roles: '.i.O.i.O', name: 'all offbeats', evidence: 'Keyboard Magazine, 2017; Wikipedia, “Guajeo”' },
  {
    id: 'B2',
    side: 3,
    roles: '.i.Oi.O.',
    name: 'reduced, ending on 4',
    evidence: 'salsa-merengue.co.uk, montuno extras; grid computed from its description',
  },
  { id: 'B4', side: 3, roles: '.i.O.iaO', name: 'pickup on 4', evidence: 'from memory' },
  { id: 'B6', side: 3, roles: '...c..c.', name: 'bombo and ponche', evidence: 'from memory' },
  {
    id: 'B7',
    side: 3,
    roles: '...c...c',
    name: 'bombo and & of 4',
    evidence: 'Martignon, Salsa Piano, 2003: rumba differs in the last stroke; grid computed',
  },
  {
    id: 'N2',
    side: 2,
    roles: 'O.iO.i.O',
    name: 'one-bar neutral',
    evidence: 'Keyboard Magazine, 2017: one-bar patterns are clave-neutral; grid from memory',
  },
  {
    id: 'N3',
    side: 3,
    roles: 'O.iO.i.O',
    name: 'one-bar neutral',
    evidence: 'Keyboard Magazine, 2017: one-bar patterns are clave-neutral; grid from memory',
  },
  { id: 'S2', side: 2, roles: 'c..c....', name: 'safe accompaniment', evidence: COMMON },
  { id: 'S3', side: 3, roles: 'c..c....', name: 'safe accompaniment', evidence: COMMON },
  {
    id: 'T2',
    side: 2,
    roles: '.c.c..',
    name: 'chords on the clave, 6/8',
    evidence: 'strokes: 6/8 clave, Drum Dojo, “Rumba clave”; use as chords: common practice',
  },
  {
    id: 'T3',
    side: 3,
    roles: 'c.c..c',
    name: 'chords on the clave, 6/8',
    evidence: 'strokes: 6/8 clave, Drum Dojo, “Rumba clave”; use as chords: common practice',
  },
] as const satisfies readonly Cell[];

export type CellId = (typeof CELLS)[number]['id'];

/** A 2-side cell with a 3-side cell: a two-bar rhythm. */
export interface Pattern {
  readonly name: string;
  readonly two: CellId;
  readonly three: CellId;
  /** Claves it is used with. With rumba clave only 3-side cells that end on the & of 4 are (common practice, no source). */
  readonly claves: readonly ClaveKind[];
  /** A 2-side cell that takes the place of `two` in the first 2-side bar of each section, once. */
  readonly opening?: CellId;
}

/** The patterns of each level, the usual one first; “another one” goes through them. */
export const LEVEL_PATTERNS: Readonly<Partial<Record<Level, readonly Pattern[]>>> = {
  1: [
    { name: 'sparse', two: 'A6', three: 'B6', claves: ['son'] },
    { name: 'sparse', two: 'A6', three: 'B7', claves: ['rumba', 'son'] },
  ],
  2: [
    { name: 'standard', two: 'A1', three: 'B1', claves: ['son', 'rumba'] },
    { name: 'reduced', two: 'A1', three: 'B2', claves: ['son'] },
  ],
  3: [
    { name: 'standard', two: 'A1', three: 'B1', claves: ['son', 'rumba'] },
    { name: 'reduced', two: 'A1', three: 'B2', claves: ['son'] },
  ],
  4: [
    { name: 'pickups', two: 'A3', three: 'B4', claves: ['son', 'rumba'] },
    { name: 'pickup into the 2-side', two: 'A1', three: 'B4', claves: ['son', 'rumba'], opening: 'A2' },
  ],
};

/** The pattern that states no side: the same bar twice. */
export const NEUTRAL_PATTERN: Pattern = { name: 'one-bar neutral', two: 'N2', three: 'N3', claves: ['son', 'rumba'] };
/** For sections in rhythms that are not built on this clave. */
export const SAFE_PATTERN: Pattern = { name: 'safe accompaniment', two: 'S2', three: 'S3', claves: ['son', 'rumba'] };
/** For the twelve-step cycle. */
export const SIX_EIGHT_PATTERN: Pattern = { name: 'chords on the clave', two: 'T2', three: 'T3', claves: ['bembe'] };

/** The levels that can be played, with the words that name them. */
export const LEVELS = [
  { level: 1, name: 'sparse', movingLines: false },
  { level: 2, name: 'standard', movingLines: false },
  { level: 3, name: 'moving line', movingLines: true },
  { level: 4, name: 'pickups', movingLines: true },
] as const satisfies readonly { readonly level: Level; readonly name: string; readonly movingLines: boolean }[];

/** The cell of an id. */
export function cell(id: CellId): Cell {
  const found = CELLS.find((row) => row.id === id);
  if (!found) throw new Error(`no cell ${id}`);
  return found;
}
