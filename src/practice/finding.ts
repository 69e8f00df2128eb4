import type { LabelledStroke } from './labelled';

/** Bars of the performance, by index from 0, to be looped: [fromBar, toBar), whole clave cycles where there are any. */
export interface LoopBars {
  readonly fromBar: number;
  readonly toBar: number;
}

/** What a finding is about, as data; `src/words/findings.ts` makes the sentence. */
export type FindingFacts =
  /** The whole pattern on the other side of the clave. `fromStart` false: the place was lost on the way, at `bar`. */
  | { readonly kind: 'crossed'; readonly fromStart: boolean; readonly bar: number }
  /** The whole pattern shifted by some steps (positive: late). */
  | { readonly kind: 'displaced'; readonly steps: number; readonly fromStart: boolean; readonly bar: number }
  /** The other clave was clapped. */
  | { readonly kind: 'other clave'; readonly heard: 'son' | 'rumba'; readonly asked: 'son' | 'rumba' }
  /** Nothing was played at all. */
  | { readonly kind: 'silent' }
  /** Stopped playing: nothing from this bar on. */
  | { readonly kind: 'stopped'; readonly bar: number }
  /** Strokes left out, mostly on one step. */
  | { readonly kind: 'missed'; readonly count: number; readonly of: number; readonly step: number | null; readonly bar: number }
  /** Strokes where there should be none, mostly on one step. */
  | { readonly kind: 'extra'; readonly count: number; readonly step: number | null; readonly bar: number }
  /** The old chord where the new one is taken early. */
  | { readonly kind: 'late chords'; readonly count: number; readonly of: number; readonly step: number; readonly bar: number }
  /** Wrong notes, mostly over one chord. */
  | { readonly kind: 'wrong notes'; readonly count: number; readonly of: number; readonly chord: string | null; readonly bar: number }
  | { readonly kind: 'wrong octave'; readonly count: number; readonly of: number; readonly bar: number }
  /** Getting faster or slower against the band, all through (`bars` null) or in these bars: milliseconds, positive, in every clave cycle. */
  | { readonly kind: 'rushing' | 'dragging'; readonly msPerCycle: number; readonly bars: LoopBars | null }
  /** Offbeats late by this share of a step (0.33 is triplet swing), where eighths are even. */
  | { readonly kind: 'swung'; readonly shareOfStep: number }
  /** One step is much earlier or later than the others. */
  | { readonly kind: 'step off'; readonly cycleStep: number; readonly step: number; readonly side: 2 | 3 | null; readonly meanMs: number }
  /** Uneven from stroke to stroke: spread as a share of a step. */
  | { readonly kind: 'uneven'; readonly spreadMs: number; readonly stepMs: number }
  /** Everything ahead of or behind the beat, on a calibrated device (negative: ahead). */
  | { readonly kind: 'offset'; readonly ms: number }
  /** The left hand behind (positive) or ahead of the right. */
  | { readonly kind: 'hands apart'; readonly leftBehindMs: number }
  /** Notes let go before the silent downbeat that they must ring over. */
  | { readonly kind: 'cut short'; readonly count: number; readonly of: number; readonly step: number; readonly bar: number }
  /** Inner notes as loud as the octaves. */
  | { readonly kind: 'inner loud'; readonly velocityApart: number };

/** One thing to work on. */
export interface Finding {
  readonly facts: FindingFacts;
  /** 0 to 1; only for the order. */
  readonly weight: number;
  /** The loop that would mend it. */
  readonly loop: LoopBars;
}

/** One step of the clave cycle over the whole take. */
export interface StepPicture {
  readonly cycleStep: number;
  /** Times that it was asked for, was played, was missed; strokes played there that nobody asked for. */
  readonly asked: number;
  readonly played: number;
  readonly missed: number;
  readonly extra: number;
  /** Mean place, less the constant offset, and standard deviation, in milliseconds; null with too few strokes. */
  readonly meanMs: number | null;
  readonly spreadMs: number | null;
}

/** What a take was like. */
export interface Assessment {
  /** True when the pass counts as clean on the tempo ladder. */
  readonly clean: boolean;
  /** Share of the strokes asked for that were right in rhythm and, when pitched, in notes (early and late within a step count). */
  readonly shareRight: number;
  /** `in time`: nothing about the timing is worth a word. `null` when timing is not judged (coarse, off, too few strokes). */
  readonly timing: 'in time' | 'worth a look' | null;
  /** One entry a step of the clave cycle. */
  readonly steps: readonly StepPicture[];
  /** At most three, the worst first. */
  readonly findings: readonly Finding[];
  /** Everything that was found, the worst first, for a teacher who wants it. */
  readonly all: readonly Finding[];
  /** Strokes that were not right, for the marks on the grid. */
  readonly faults: readonly LabelledStroke[];
}
