import type { ClaveKind, Level } from '../../vocabulary';
import { CELLS, type Cell, type CellId, cell } from './cells';

/** A 2-side cell with a 3-side cell: a two-bar rhythm. */
export interface Pattern {
  readonly name: string;
  readonly two: Cell;
  readonly three: Cell;
  /** Claves it is used with. With rumba clave only 3-side cells that end on the & of 4 are (common practice, no source). */
  readonly claves: readonly ClaveKind[];
  /** A 2-side cell that takes the place of `two` in the first 2-side bar of each section, once. */
  readonly opening?: Cell;
  /** True when every stroke is an octave: a tune in the montuno rhythm. */
  readonly riff?: boolean;
}

/** 3-side cells that go with rumba clave. */
const RUMBA_THREES: readonly CellId[] = ['B1', 'B4', 'B7', 'M5', 'N3', 'C3', 'G3', 'L3', 'E3'];

/** A pattern of two cells by their ids, with the claves it may be used with. */
export function pattern(
  name: string,
  two: CellId,
  three: CellId,
  more: { readonly opening?: CellId; readonly riff?: boolean } = {},
): Pattern {
  const { opening, riff } = more;
  const claves: readonly ClaveKind[] = cell(two).roles.length === 6 ? ['bembe'] : RUMBA_THREES.includes(three) ? ['son', 'rumba'] : ['son'];
  return { name, two: cell(two), three: cell(three), claves, ...(opening ? { opening: cell(opening) } : {}), ...(riff ? { riff } : {}) };
}

/** The patterns of each level, the usual one first; “another one” goes through them. */
export const LEVEL_PATTERNS: Readonly<Record<Level, readonly Pattern[]>> = {
  1: [
    pattern('sparse', 'A6', 'B6'),
    pattern('sparse', 'A6', 'B7'),
    pattern('behind a soloist', 'A5', 'B6'),
    pattern('behind a soloist', 'A5', 'B7'),
  ],
  2: [
    pattern('standard', 'A1', 'B1'),
    pattern('reduced', 'A1', 'B2'),
    pattern('after the shells', 'A4', 'B1'),
    pattern('as the tres plays it', 'A1', 'B5'),
  ],
  3: [
    pattern('standard', 'A1', 'B1'),
    pattern('reduced', 'A1', 'B2'),
    pattern('after the shells', 'A4', 'B1'),
    pattern('as the tres plays it', 'A4', 'B5'),
  ],
  4: [
    pattern('pickups', 'A3', 'B4'),
    pattern('pickup into the 2-side', 'A1', 'B4', { opening: 'A2' }),
    pattern('pickup into the 3-side', 'A3', 'B1'),
    pattern('shells and pickup', 'A4', 'B4'),
  ],
  5: [
    pattern('chromatic pickups', 'A3', 'B4'),
    pattern('chromatic into the 3-side', 'A3', 'B1'),
    pattern('chromatic into the 2-side', 'A1', 'B4', { opening: 'A2' }),
  ],
  6: [
    pattern('riff', 'A1', 'B1', { riff: true }),
    pattern('bloque', 'A5', 'B3'),
    pattern('bloque', 'A5', 'B7'),
    pattern('riff with pickups', 'A3', 'B4', { riff: true }),
    pattern('riff after the shells', 'A4', 'B2', { riff: true }),
  ],
};

/** The pattern that states no side: the same bar twice. */
export const NEUTRAL_PATTERN = pattern('one-bar neutral', 'N2', 'N3');
/** For sections in rhythms that are not built on this clave. */
export const SAFE_PATTERN: Pattern = { ...pattern('safe accompaniment', 'S2', 'S3'), claves: ['son', 'rumba'] };

/**
 * Every pair of montuno cells that may be chosen by hand: with rumba clave only 3-side cells that end on the & of 4; the chords of
 * B3 strike 1 of the 3-side and so go with A5 and A6 alone; A2 opens a phrase once and is no loop (common practice, no source).
 */
export function pairsFor(kind: ClaveKind): readonly Pattern[] {
  const montuno = (side: 2 | 3) => CELLS.filter((row) => row.side === side && /^[AB]\d$/.test(row.id));
  return montuno(2).flatMap((two) =>
    montuno(3).flatMap((three) => {
      if (two.id === 'A2' || (three.id === 'B3' && two.id !== 'A5' && two.id !== 'A6')) return [];
      const pair = pattern(`${two.id} and ${three.id}`, two.id, three.id);
      return pair.claves.includes(kind) ? [pair] : [];
    }),
  );
}
