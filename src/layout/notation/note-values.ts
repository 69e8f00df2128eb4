/**
 * Lengths in ticks → written note values. Cut time is divided at the middle of the bar: a note that sounds across it is tied,
 * unless it starts the bar and fills three or four quarters. 6/8 is divided into two dotted quarters. Inside such a half, values on
 * the eighth grid stand as they are (eighth–quarter–eighth is usual); what is finer is divided at the beats.
 * Common practice of engraving, no source.
 */
import type { NoteShape, NoteValue } from './notation';

/** One written value: where it starts and how long it lasts, in ticks. */
export interface Piece {
  readonly at: number;
  readonly ticks: number;
  readonly value: NoteValue;
}

/**
 * How a bar is divided, in written ticks: where a note is tied whatever its length (`middle`), the groups that beams stay in (`half`), its beats, the
 * step on which rhythms may lie off the beat without a tie, and how far into a full bar it begins (a pickup fills the end).
 */
export interface BarFrame {
  readonly middle: number;
  readonly half: number;
  readonly beat: number;
  readonly step: number;
  readonly shift: number;
  readonly ticks: number;
}

/** The finest grid that is written; what lies between is moved to it. */
export const WRITTEN_GRID = 60;

const SINGLE: readonly (readonly [number, NoteShape, 0 | 1])[] = [
  [1920, 'whole', 0],
  [1440, 'half', 1],
  [960, 'half', 0],
  [720, 'quarter', 1],
  [480, 'quarter', 0],
  [360, 'eighth', 1],
  [240, 'eighth', 0],
  [180, 'sixteenth', 1],
  [120, 'sixteenth', 0],
  [60, 'thirty-second', 0],
];

function single(ticks: number): NoteValue | null {
  const row = SINGLE.find(([length]) => length === ticks);
  return row ? { shape: row[1], dots: row[2] } : null;
}

/** The tied values of a note from `from` to `to` in a bar. Both are multiples of `WRITTEN_GRID`, `from` < `to`. */
export function noteValues(from: number, to: number, frame: BarFrame): Piece[] {
  const longest = single(to - from);
  if (from === 0 && frame.shift === 0 && longest && to - from > frame.middle) return [{ at: from, ticks: to - from, value: longest }];
  return cut(from, to, frame.middle, frame.shift).flatMap(([a, b]) => middleValues(a, b, frame));
}

/** Inside the middle of a bar of several groups, a note that begins with a group may fill more than one of them. */
function middleValues(from: number, to: number, frame: BarFrame): Piece[] {
  const value = single(to - from);
  const compound = frame.half === 3 * frame.step;
  const whole = (from + frame.shift) % frame.half === 0 && (!compound || (to - from) % frame.half === 0);
  if (value && whole && to - from > frame.half) return [{ at: from, ticks: to - from, value }];
  return cut(from, to, frame.half, frame.shift).flatMap(([a, b]) => halfValues(a, b, frame));
}

function halfValues(from: number, to: number, frame: BarFrame): Piece[] {
  const value = single(to - from);
  const place = from + frame.shift;
  const onSteps = place % frame.step === 0 && (to - from) % frame.step === 0;
  if (value && (onSteps || place % frame.beat === 0)) return [{ at: from, ticks: to - from, value }];
  return cut(from, to, frame.beat, frame.shift).flatMap(([a, b]) => cutGreedily(a, b, frame.shift));
}

/** The values of a silence: full bars and halves in one sign, else one sign per beat and part of a beat; no dots except in 6/8. */
export function restValues(from: number, to: number, frame: BarFrame): Piece[] {
  return cut(from, to, frame.middle, frame.shift).flatMap(([a, b]) => {
    const whole = b - a === frame.middle ? single(frame.middle) : null;
    return whole ? [{ at: a, ticks: b - a, value: whole }] : restsInGroups(a, b, frame);
  });
}

function restsInGroups(from: number, to: number, frame: BarFrame): Piece[] {
  return cut(from, to, frame.half, frame.shift).flatMap(([a, b]) => {
    const whole = b - a === frame.half ? single(frame.half) : null;
    if (whole) return [{ at: a, ticks: b - a, value: whole }];
    const place = (a + frame.shift) % frame.half;
    if (frame.beat === 240 && place === 0 && b - a === 480) return [{ at: a, ticks: 480, value: { shape: 'quarter', dots: 0 } }];
    return cut(a, b, frame.beat, frame.shift).flatMap(([c, d]) => cutGreedily(c, d, frame.shift));
  });
}

/** Pieces inside one beat, undotted, each starting on a multiple of its own length. */
function cutGreedily(from: number, to: number, shift: number): Piece[] {
  const pieces: Piece[] = [];
  let at = from;
  while (at < to) {
    const start = at;
    const row = SINGLE.find(([length, , dots]) => dots === 0 && length <= to - start && (start + shift) % length === 0);
    const [ticks, shape] = row ?? [Math.min(WRITTEN_GRID, to - start), 'thirty-second' as const];
    pieces.push({ at, ticks, value: { shape, dots: 0 } });
    at += ticks;
  }
  return pieces;
}

/** [from, to) cut at every multiple of `unit`, counted from `shift` ticks before the bar. */
function cut(from: number, to: number, unit: number, shift: number): [number, number][] {
  const parts: [number, number][] = [];
  let at = from;
  while (at < to) {
    const next = Math.min(to, (Math.floor((at + shift) / unit) + 1) * unit - shift);
    parts.push([at, next]);
    at = next;
  }
  return parts;
}
