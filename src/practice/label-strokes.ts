import type { ExpectedStroke, LabelledStroke, PlayedStroke } from './labelled';
import type { TakenNote } from './take';
import { strokeOffMs } from './timing-limits';

/** A stroke asked for and the stroke that answers it. */
export interface Answer {
  readonly expected: ExpectedStroke;
  readonly played: PlayedStroke;
  readonly otherEnding: boolean;
  /** Milliseconds off its place, the constant offset taken off. */
  readonly deviationMs: number;
}

/** What is looked at: pitches, single moments, and how far everything was played off by octaves. */
export interface Judged {
  readonly pitches: boolean;
  readonly moments: boolean;
  readonly octaveShift: number;
}

/** The label of an answered stroke. Notes come before moments: a wrong note that is also late is a wrong note. */
export function labelAnswer({ expected, played, otherEnding, deviationMs }: Answer, judged: Judged): LabelledStroke {
  const { wrong, missing, octave } = judged.pitches
    ? pitchFaults(expected, played, judged.octaveShift)
    : { wrong: [], missing: [], octave: false };
  const off = judged.moments && Math.abs(deviationMs) > strokeOffMs(expected.stepMs);
  const moment = !off ? 'right' : deviationMs < 0 ? 'early' : 'late';
  const label = wrong.length === 0 ? moment : octave ? 'wrong octave' : 'wrong note';
  return { label, expected, played, playTick: expected.playTick, deviationMs, wrong, missing, otherEnding };
}

/** A stroke asked for that nobody played. */
export const missedStroke = (expected: ExpectedStroke): LabelledStroke => ({
  label: 'missed',
  expected,
  played: null,
  playTick: expected.playTick,
  deviationMs: null,
  wrong: [],
  missing: expected.notes,
  otherEnding: false,
});

/** A stroke that nobody asked for. */
export const extraStroke = (played: PlayedStroke, playTick: number): LabelledStroke => ({
  label: 'extra',
  expected: null,
  played,
  playTick,
  deviationMs: null,
  wrong: [],
  missing: [],
  otherEnding: false,
});

/**
 * Notes that do not belong and notes that are missing. A note of the stroke doubled in another octave is no fault while all its notes
 * sound; in place of one of them it is the wrong octave.
 */
function pitchFaults(expected: ExpectedStroke, played: PlayedStroke, shift: number) {
  const asked = expected.notes.flatMap(({ midi }) => (midi === null ? [] : [midi]));
  const heard = new Set(played.notes.map(({ midi }) => (midi ?? 0) - shift));
  const missing = expected.notes.filter(({ midi }) => midi !== null && !heard.has(midi));
  const strange = played.notes.filter(({ midi }) => midi !== null && !asked.includes(midi - shift));
  const foreign = strange.filter(({ midi }) => !asked.some((note) => mod12(note) === mod12(midi ?? 0)));
  if (foreign.length > 0) return { wrong: foreign, missing, octave: false };
  const misplaced = strange.filter(({ midi }) => missing.some((note) => mod12(note.midi ?? 0) === mod12(midi ?? 0)));
  // A line that is played in one octave alone, without its doubling, is thin but not wrong.
  const thin = strange.length === 0;
  return { wrong: thin ? [] : misplaced, missing, octave: true };
}

/**
 * Whole octaves, in semitones, by which most strokes were played off, or 0: a short keyboard, or a transposed one. Three strokes in
 * five must agree, and at least four.
 */
export function octaveShiftOf(pairs: readonly { readonly expected: ExpectedStroke; readonly played: PlayedStroke }[]): number {
  const counts = new Map<number, number>();
  let judged = 0;
  for (const { expected, played } of pairs) {
    const shift = highest(played.notes.map(({ midi }) => midi)) - highest(expected.notes.map(({ midi }) => midi));
    if (!Number.isFinite(shift)) continue;
    judged += 1;
    counts.set(shift, (counts.get(shift) ?? 0) + 1);
  }
  for (const [shift, count] of counts) if (shift !== 0 && shift % 12 === 0 && count >= 4 && count >= 0.6 * judged) return shift;
  return 0;
}

const highest = (notes: readonly TakenNote['midi'][]): number => Math.max(...notes.flatMap((midi) => (midi === null ? [] : [midi])));
const mod12 = (midi: number): number => ((midi % 12) + 12) % 12;
