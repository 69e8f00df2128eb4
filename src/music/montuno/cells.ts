import type { Side } from '../../vocabulary';

/**
 * Cells: one bar of rhythm with roles, for one side of the clave. Adding a cell is adding a row.
 *
 * `O` octave · `i` inner notes · `c` both at once · `k` both without the upper note · `a` approach into the octave that follows · `s` the lower octave note alone ·
 * `l` `m` `h` `t` the hand's notes one by one from the lowest to the top · `.` nothing.
 * `left` gives the left hand a bar of its own: `o` the octave line an octave below · `r` root · `f` fifth · `T` root and tenth.
 * Sources are those of the practice literature as far as they could be read; `evidence` says how far.
 */
export interface Cell {
  readonly id: string;
  readonly side: Side;
  /** One character a step: 8 in 4/4, 6 in 6/8. */
  readonly roles: string;
  readonly name: string;
  readonly evidence: string;
  readonly left?: string;
  /** True for figures that change with the chord and take nothing early. */
  readonly onTime?: boolean;
}

const COMMON = 'common practice, no source';

const MEMORY = 'from memory';
const NEUTRAL = 'Keyboard Magazine, 2017: one-bar patterns are clave-neutral; grid from memory';

/** All cells. Ids begin with A (2-side) and B (3-side) for montuno cells that pair freely. */
export const CELLS = [
  {
    id: 'A1',
    side: 2,
    roles: 'O.iO.i.O',
    name: 'standard',
    evidence: 'principle: Keyboard Magazine, “Playing in Clave”, 2017; grid: common practice',
  },
  { id: 'A2', side: 2, roles: 'OiiO.i.O', name: 'arpeggiated start', evidence: 'idea: Keyboard Magazine, 2017; grid from memory' },
  { id: 'A3', side: 2, roles: 'O.iO.iaO', name: 'pickup on 4', evidence: MEMORY },
  { id: 'A4', side: 2, roles: 'O.i.Oi.O', name: 'after the shells', evidence: MEMORY },
  { id: 'A5', side: 2, roles: '..c.c..O', name: 'chords on the clave', evidence: MEMORY },
  { id: 'A6', side: 2, roles: 'c......c', name: 'sparse', evidence: 'accents: Keyboard Magazine, 2017; grid computed' },
  { id: 'B1', side: 3, roles: '.i.O.i.O', name: 'all offbeats', evidence: 'Keyboard Magazine, 2017; Wikipedia, “Guajeo”' },
  {
    id: 'B2',
    side: 3,
    roles: '.i.Oi.O.',
    name: 'reduced, ending on 4',
    evidence: 'salsa-merengue.co.uk, montuno extras; grid computed from its description',
  },
  { id: 'B3', side: 3, roles: 'c..c..c.', name: 'chords on the clave', evidence: MEMORY },
  { id: 'B4', side: 3, roles: '.i.O.iaO', name: 'pickup on 4', evidence: MEMORY },
  {
    id: 'B5',
    side: 3,
    roles: 'O.iO.iO.',
    name: 'as the tres plays it',
    evidence: 'Martignon, Salsa Piano, 2003, for the last note; first strokes assumed',
  },
  { id: 'B6', side: 3, roles: '...c..c.', name: 'bombo and ponche', evidence: MEMORY },
  {
    id: 'B7',
    side: 3,
    roles: '...c...c',
    name: 'bombo and & of 4',
    evidence: 'Martignon, Salsa Piano, 2003: rumba differs in the last stroke; grid computed',
  },
  { id: 'N2', side: 2, roles: 'O.iO.i.O', name: 'one-bar neutral', evidence: NEUTRAL },
  { id: 'N3', side: 3, roles: 'O.iO.i.O', name: 'one-bar neutral', evidence: NEUTRAL },
  { id: 'F2', side: 2, roles: '.i.O.i.O', name: 'all offbeats', evidence: 'Wikipedia, “Guajeo”: the changüí ancestor' },
  { id: 'M2', side: 2, roles: 'O.iO...O', name: 'call', evidence: COMMON },
  { id: 'M3', side: 3, roles: '.i.O.iO.', name: 'call', evidence: COMMON },
  { id: 'M4', side: 2, roles: 'O.i..i.O', name: 'melody', evidence: COMMON },
  { id: 'M5', side: 3, roles: '.O.i...O', name: 'answer', evidence: COMMON },
  { id: 'S2', side: 2, roles: 'c..c....', name: 'safe accompaniment', evidence: COMMON },
  { id: 'S3', side: 3, roles: 'c..c....', name: 'safe accompaniment', evidence: COMMON },
  { id: 'C2', side: 2, roles: '.k.k.k.k', left: 'r.f.r.f.', name: 'chords off the beat, left hand on it', evidence: COMMON },
  { id: 'C3', side: 3, roles: '.k.k.k.k', left: 'r.f.r.f.', name: 'chords off the beat, left hand on it', evidence: COMMON },
  { id: 'G2', side: 2, roles: 'l.mht.hm', left: 'r.....f.', onTime: true, name: 'arpeggio', evidence: 'unverified: grid from memory' },
  { id: 'G3', side: 3, roles: 'l.mht.hm', left: 'r.....f.', onTime: true, name: 'arpeggio', evidence: 'unverified: grid from memory' },
  { id: 'L2', side: 2, roles: 'c.m.h.mh', left: 'T...f...', onTime: true, name: 'chord and broken notes', evidence: COMMON },
  { id: 'L3', side: 3, roles: 'c.m.h.mh', left: 'T...f...', onTime: true, name: 'chord and broken notes', evidence: COMMON },
  { id: 'E2', side: 2, roles: 'lmhthmhm', left: 'T...f...', onTime: true, name: 'broken eighths', evidence: COMMON },
  { id: 'E3', side: 3, roles: 'lmhthmhm', left: 'T...f...', onTime: true, name: 'broken eighths', evidence: COMMON },
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
  {
    id: 'U2',
    side: 2,
    roles: '.i.i.O',
    name: 'on the bell, 6/8',
    evidence: 'strokes: timbales pattern sheet, 6/8 bell; roles: common practice',
  },
  {
    id: 'U3',
    side: 3,
    roles: 'O.i.iO',
    name: 'on the bell, 6/8',
    evidence: 'strokes: timbales pattern sheet, 6/8 bell; roles: common practice',
  },
] as const satisfies readonly Cell[];

/** The id of a cell in the table. */
export type CellId = (typeof CELLS)[number]['id'];

/** The cell of an id. */
export function cell(id: CellId): Cell {
  const found: Cell | undefined = CELLS.find((row) => row.id === id);
  if (!found) throw new Error(`no cell ${id}`);
  return found;
}
