import type { TempoMap } from '../performance/tempo';
import { tickAt } from '../performance/tempo';
import type { Direction, Result } from '../vocabulary';
import { failed, ok, TICKS_PER_STEP } from '../vocabulary';
import { gatherStrokes } from './gather-strokes';
import type { TakenNote } from './take';

/*
 * Play it in once, carry it anywhere: two bars played on one chord are read as a rhythm with roles, in the text form of a chart's
 * `figure:` line, which src/music/montuno/own-figure.ts carries through any chart. What is read is a proposal for the grid to confirm:
 * `unsure` names the steps that lay between two places.
 *
 * readPlayedIn({ notes, tempo, fromPlayTick: 0, steps: 16, direction: '2-3' }) → { text: 'o.io.i.o .i.o.i.o', … }
 */

/** What was played in, and where. */
export interface PlayedIn {
  /** On the clock of the song, ascending. */
  readonly notes: readonly TakenNote[];
  readonly tempo: TempoMap;
  /** Play tick of the first of the two bars. */
  readonly fromPlayTick: number;
  /** Steps of the two bars together: 16, or 12 in 6/8. */
  readonly steps: 16 | 12;
  /** Which side the first bar is on. */
  readonly direction: Direction;
}

/** Letters of a `figure:` line: octave, inner notes, both at once, a single note, an approach note. */
export type FigureLetter = 'o' | 'i' | 'c' | 's' | 'a';

/** One stroke as it was read. */
export interface ReadStroke {
  readonly step: number;
  readonly letter: FigureLetter;
  /** Ascending. */
  readonly midi: readonly number[];
  /** How far off the step, in milliseconds, the constant offset taken off. */
  readonly deviationMs: number;
}

/** How the line of the outer notes moves over the two bars. */
export type LineShape = 'held' | 'rising' | 'falling' | 'up and down' | 'down and up' | 'mixed';

/** The figure that was read. */
export interface ReadFigure {
  /** Two bars with one space between, in `direction`: what a `figure:` line takes. */
  readonly text: string;
  readonly direction: Direction;
  readonly strokes: readonly ReadStroke[];
  readonly line: { readonly shape: LineShape /** Semitones of each outer note above the first. */; readonly semitones: readonly number[] };
  /** Steps whose stroke lay nearer to the middle between two steps than to its own. */
  readonly unsure: readonly number[];
  readonly offsetMs: number;
}

/** Why nothing could be read. */
export interface PlayInFault {
  readonly code: 'nothing played' | 'one stroke' | 'not on steps';
  readonly expected: string;
}

/** Further off its step than this share of it, a stroke is unsure. */
const UNSURE_SHARE = 0.3;
/** With more unsure strokes than this share, what was played does not lie on steps. */
const MOST_UNSURE = 0.4;

/** Reads two bars that were played in. A stroke just before the first bar, and one after the last, are those of the other end of the loop. */
export function readPlayedIn({ notes, tempo, fromPlayTick, steps, direction }: PlayedIn): Result<ReadFigure, PlayInFault> {
  const twoBars = steps === 16 ? 'two bars on one chord' : 'two bars of 6/8 on one chord';
  const end = fromPlayTick + steps * TICKS_PER_STEP;
  const placed = gatherStrokes(notes, tempo)
    .map(({ at, notes: struck }) => ({ place: tickAt(tempo, at), at, struck }))
    .filter(({ place }) => place >= fromPlayTick - 1.5 * TICKS_PER_STEP && place < end + 0.5 * TICKS_PER_STEP);
  if (placed.length === 0) return failed({ code: 'nothing played', expected: `${twoBars}, from the count-in on` });
  const offsetTicks = commonOffset(placed.map(({ place }) => place - fromPlayTick));
  const found = new Map<number, { midi: number[]; off: number }>();
  for (const { place, struck } of placed) {
    const exact = (place - fromPlayTick - offsetTicks) / TICKS_PER_STEP;
    const nearest = Math.round(exact);
    const step = ((nearest % steps) + steps) % steps;
    const wraps = step !== nearest;
    if (wraps && found.has(step)) continue;
    const midi = [...new Set(struck.flatMap(({ midi: note }) => (note === null ? [] : [note])))].sort((a, b) => a - b);
    const held = found.get(step);
    if (!held) found.set(step, { midi, off: exact - nearest });
    else held.midi = [...new Set([...held.midi, ...midi])].sort((a, b) => a - b);
  }
  if (found.size < 2) return failed({ code: 'one stroke', expected: `${twoBars} with at least two strokes` });
  const ordered = [...found].sort(([a], [b]) => a - b);
  const unsure = ordered.filter(([, { off }]) => Math.abs(off) > UNSURE_SHARE).map(([step]) => step);
  if (unsure.length > MOST_UNSURE * ordered.length)
    return failed({ code: 'not on steps', expected: `${twoBars} in even eighths with the click` });
  const msPerTick = millisPerTick(tempo, fromPlayTick);
  const letters = lettersOf(ordered.map(([step, { midi }]) => ({ step, midi })));
  const strokes = ordered.map(([step, { midi, off }], index): ReadStroke => {
    return { step, letter: letters[index] ?? 'o', midi, deviationMs: off * TICKS_PER_STEP * msPerTick };
  });
  const grid = Array.from({ length: steps }, (_, step) => strokes.find((stroke) => stroke.step === step)?.letter ?? '.').join('');
  const outer = strokes.filter(({ letter, midi }) => letter !== 'i' && midi.length > 0).map(({ midi }) => midi.at(-1) ?? 0);
  const semitones = outer.map((midi) => midi - (outer[0] ?? midi));
  return ok({
    text: `${grid.slice(0, steps / 2)} ${grid.slice(steps / 2)}`,
    direction,
    strokes,
    line: { shape: shapeOf(semitones), semitones },
    unsure,
    offsetMs: offsetTicks * msPerTick,
  });
}

/** The offset from the grid that all places share, within half a step either way: the mean of their angles. */
function commonOffset(places: readonly number[]): number {
  const turn = (2 * Math.PI) / TICKS_PER_STEP;
  const sine = places.reduce((sum, place) => sum + Math.sin(place * turn), 0);
  const cosine = places.reduce((sum, place) => sum + Math.cos(place * turn), 0);
  return Math.atan2(sine, cosine) / turn;
}

const millisPerTick = (tempo: TempoMap, tick: number): number => {
  const segment = tempo.findLast(({ fromTick }) => fromTick <= tick) ?? tempo[0];
  return 60_000 / (960 * segment.tempo);
};

interface Struck {
  readonly step: number;
  readonly midi: readonly number[];
}

/**
 * The part that each stroke plays. The widest octave of the two bars shows where the outer line lies; what lies inside it is inner.
 * A lone outer stroke of one pitch directly before another that it leads into by a half or whole step, whose pitch is heard only
 * in such places, is an approach note.
 */
function lettersOf(strokes: readonly Struck[]): FigureLetter[] {
  const octaves = strokes.filter(({ midi }) => midi.length > 1 && pcs(midi) === 1);
  const widest = Math.max(0, ...octaves.map(span));
  const lines = octaves.filter((stroke) => span(stroke) === widest);
  const bottom = Math.max(...lines.map(({ midi }) => midi[0] ?? 0));
  const top = Math.min(...lines.map(({ midi }) => midi.at(-1) ?? 0));
  const inside = ({ midi }: Struck) => lines.length > 0 && (midi[0] ?? 0) > bottom - 3 && (midi.at(-1) ?? 0) < top + 3;
  return strokes.map((stroke, index): FigureLetter => {
    const { midi } = stroke;
    const outer = midi.length > 1 && ((midi.at(-1) ?? 0) - (midi[0] ?? 0)) % 12 === 0 && (lines.length === 0 || span(stroke) >= widest);
    if (midi.length === 0) return 'o';
    if (outer) return pcs(midi) > 1 ? 'c' : isApproach(strokes, index) ? 'a' : 'o';
    if (pcs(midi) === 1 && midi.length === 1 && !inside(stroke)) return 's';
    return lines.length === 0 && pcs(midi) > 2 ? 'c' : 'i';
  });
}

function isApproach(strokes: readonly Struck[], index: number): boolean {
  const own = strokes[index];
  const next = strokes[(index + 1) % strokes.length];
  if (!own || !next || next.step !== own.step + 1) return false;
  const pitch = own.midi.at(-1) ?? 0;
  const move = Math.abs((next.midi.at(-1) ?? 0) - pitch);
  const leads = (stroke: Struck, other: number) => strokes[(other + 1) % strokes.length]?.step === stroke.step + 1;
  const elsewhere = strokes.some(
    (stroke, other) => other !== index && !leads(stroke, other) && stroke.midi.some((midi) => (midi - pitch) % 12 === 0),
  );
  return (move === 1 || move === 2) && !elsewhere;
}

const span = ({ midi }: Struck): number => (midi.at(-1) ?? 0) - (midi[0] ?? 0);
const pcs = (midi: readonly number[]): number => new Set(midi.map((note) => note % 12)).size;

/** How a line moves, repeated notes left out. */
export function shapeOf(semitones: readonly number[]): LineShape {
  const moves = semitones.slice(1).flatMap((value, index) => {
    const move = Math.sign(value - (semitones[index] ?? value));
    return move === 0 ? [] : [move];
  });
  if (moves.length === 0) return 'held';
  const turns = moves.filter((move, index) => index > 0 && move !== moves[index - 1]).length;
  if (turns === 0) return moves[0] === 1 ? 'rising' : 'falling';
  if (turns === 1) return moves[0] === 1 ? 'up and down' : 'down and up';
  return 'mixed';
}
