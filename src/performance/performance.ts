import type { HalfNotesPerMinute } from '../vocabulary';

/** The parts that a player can balance and mute. */
export const PARTS = ['piano right', 'piano left', 'bass', 'clave', 'pulse', 'percussion'] as const;
export type PartName = (typeof PARTS)[number];

/** One sound: a note at a pitch, or a drum stroke. */
export interface PerformedEvent {
  /** Unique within its performance, stable for the same score. */
  readonly id: number;
  readonly part: PartName;
  /** Notated place, in ticks from the first bar of the form. */
  readonly tick: number;
  /** Feel: how far off its notated place it sounds, in ticks, usually 0. */
  readonly offsetTicks: number;
  /** How long it sounds. */
  readonly soundingTicks: number;
  /** MIDI note, or null for a drum. */
  readonly midi: number | null;
  /** Name of the drum sound (`clave`, `pulse high`, `pulse low`, …), or null for a note. */
  readonly drum: string | null;
  /** 1 to 127. */
  readonly velocity: number;
  readonly firstPassOnly: boolean;
}

/** An open vamp: part of a performance that goes round until it is cued (`vamps.ts`). */
export interface Vamp {
  readonly fromTick: number;
  /** Exclusive. */
  readonly toTick: number;
  /**
   * Where music may pass from the form into a round and back, ascending: the start of the last bar, from which a fill may lead on, and
   * the last quarter note, from which the strokes do.
   */
  readonly turns: readonly [number, number];
  /** The vamp going round by itself, over the same ticks, closed. */
  readonly round: Performance;
}

/** A score made into sounds, still in ticks; `occurrences` unrolls it and the tempo map gives the seconds. */
export interface Performance {
  /** Ascending by sounding place, then by id. */
  readonly events: readonly PerformedEvent[];
  readonly fromTick: number;
  /** Exclusive; a loop goes from here back to `fromTick`. */
  readonly toTick: number;
  /** True when it goes round; false when it is played once and ends. */
  readonly closed: boolean;
  /** Ticks at which a clave cycle begins, ascending, within [fromTick, toTick): where live changes may land. */
  readonly cycleStarts: readonly number[];
  /** Start of the bars, for the count-in and for starting anywhere. */
  readonly bars: readonly { readonly tick: number; readonly ticks: number; readonly cycleStep: number }[];
  /** Steps of one clave cycle that the clave strikes, and the cycle's length in steps. */
  readonly clave: { readonly steps: readonly number[]; readonly cycleSteps: number };
  readonly tempo: HalfNotesPerMinute;
  /** Open vamps that are held until they are cued, ascending; none when missing. */
  readonly vamps?: readonly Vamp[];
}
