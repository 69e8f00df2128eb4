import type { PartName } from '../performance/performance';
import type { SongSeconds } from '../vocabulary';
import type { TakenNote } from './take';

/** One note of a stroke that was asked for. */
export interface ExpectedNote {
  /** Id of the event in the performance. */
  readonly id: number;
  readonly part: PartName;
  readonly midi: number | null;
  readonly velocity: number;
  readonly soundingTicks: number;
}

/** What was asked for at one moment, both hands together. */
export interface ExpectedStroke {
  /** Notated place in play ticks, and in the score with the times gone round before. */
  readonly playTick: number;
  readonly tick: number;
  readonly pass: number;
  /** Index into the performance's bars, step of that bar, and step of the clave cycle. */
  readonly bar: number;
  readonly step: number;
  readonly cycleStep: number;
  /** When it sounds, feel included. */
  readonly at: SongSeconds;
  /** Length of a step at this place, in milliseconds. */
  readonly stepMs: number;
  readonly notes: readonly ExpectedNote[];
  /** Play tick of the other accepted ending of the 3-side bar (beat 4, or the & of 4), or null. */
  readonly otherEnding: number | null;
}

/** Notes that were struck together. */
export interface PlayedStroke {
  /** The moment of its outer (highest) note, which carries the line. */
  readonly at: SongSeconds;
  /** Ascending by moment. */
  readonly notes: readonly TakenNote[];
}

/** What became of one stroke. */
export type StrokeLabel = 'right' | 'early' | 'late' | 'wrong note' | 'wrong octave' | 'missed' | 'extra';

/** A stroke with its label: asked for and played, or one of the two. */
export interface LabelledStroke {
  readonly label: StrokeLabel;
  /** Null for an extra stroke. */
  readonly expected: ExpectedStroke | null;
  /** Null for a missed stroke. */
  readonly played: PlayedStroke | null;
  /** Where it lies: of the stroke asked for, or, for an extra stroke, where it was played; in play ticks (fractional for extras). */
  readonly playTick: number;
  /** How far off its place in milliseconds (negative: early), less `Matched.offsetMs` and the displacement; null for missed and extra. */
  readonly deviationMs: number | null;
  /** Notes that do not belong to the stroke, and notes of the stroke that did not sound. */
  readonly wrong: readonly TakenNote[];
  readonly missing: readonly ExpectedNote[];
  /** True when the other accepted ending of the 3-side bar was played; that is right. */
  readonly otherEnding: boolean;
}

/** Part of a take in which the whole pattern lay the same number of steps off; 0 is in place. */
export interface Stretch {
  readonly fromPlayTick: number;
  /** Exclusive. */
  readonly toPlayTick: number;
  /** Steps that the pattern came late (positive) or early, from −7 to 8; 8 (6 in 6/8) is the other side of the clave: crossed. */
  readonly displacedSteps: number;
  /** True when that is half a clave cycle. */
  readonly crossed: boolean;
}

/** A take with a label on every stroke. */
export interface Matched {
  /** Ascending by place. In a displaced stretch strokes are labelled against the displaced pattern, and pitches are not judged. */
  readonly strokes: readonly LabelledStroke[];
  /** Constant offset in milliseconds (negative: early): the device's, or the player's own if the device is calibrated. */
  readonly offsetMs: number;
  /** Standard deviation of the strokes about that offset, in milliseconds; null with fewer than two strokes. */
  readonly spreadMs: number | null;
  /** At least one, end to end, ascending. */
  readonly stretches: readonly Stretch[];
  /** When the clave was clapped: which clave it was. `null` when no clave was asked for or it cannot be told. */
  readonly claveHeard: 'son' | 'rumba' | null;
  /** Semitones (whole octaves) by which everything was played off; forgiven: the labels are as if it were 0. */
  readonly octaveShift: number;
}
