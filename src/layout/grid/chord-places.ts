import { printedChord } from '../../words/spoken';
import type { ChordMark } from './cards';
import { fittedLine, type TypeLine } from './type-run';

/** A place in a panel, in units. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A line of type at its place: `x` is its left end, `y` its baseline. */
export interface Lettering extends TypeLine {
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

/** A chord symbol, and the tie between where it is played and where it is written, cut by the panel's edge when the two lie in different panels. */
export interface ChordBox {
  readonly mark: ChordMark;
  readonly lettering: Lettering;
  readonly tie: { readonly from: Point; readonly to: Point; readonly dip: number } | null;
}

/** Where chord symbols stand, in units. */
export interface ChordRoom {
  readonly cell: number;
  readonly steps: number;
  readonly baseline: number;
  readonly size: number;
}

/** Type of an echo and of a chord carried over, as a share of the type of a chord that is played. */
const QUIET = 0.82;
/** Least type, as a share, for a symbol that has no room. */
const LEAST = 0.55;

/** Chord symbols over the cells in which they are played; one that would run over the panel's end stands back from it. */
export function chordPlaces(marks: readonly ChordMark[], room: ChordRoom): readonly ChordBox[] {
  const edge = room.steps * room.cell;
  return marks.map((mark, at) => {
    const next = marks[at + 1];
    const left = mark.step * room.cell + 10;
    const free = next ? Math.max(room.cell, next.step * room.cell - left - 8) : Math.max(edge - left - 8, edge * 0.45);
    const size = mark.kind === 'played' ? room.size : room.size * QUIET;
    const line = fittedLine(printedChord(mark.symbol), size, free, size * LEAST);
    const x = Math.min(left, edge - line.width - 8);
    return { mark, lettering: { ...line, x, y: room.baseline }, tie: tieOf(mark, x, line.width, room) };
  });
}

function tieOf(mark: ChordMark, x: number, width: number, room: ChordRoom): ChordBox['tie'] {
  const y = room.baseline + 5;
  const dip = room.size * 0.3;
  const middle = x + width * 0.45;
  if (mark.kind === 'echo' && mark.step <= 0) return { from: { x: -room.cell * 0.4, y }, to: { x: middle, y }, dip };
  if (mark.tieTo === null) return null;
  const out = mark.tieTo >= room.steps;
  return { from: { x: middle, y }, to: { x: mark.tieTo * room.cell + (out ? room.cell * 0.4 : 20), y }, dip };
}
