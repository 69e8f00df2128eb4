/*
 * Every number that decides what is said about somebody's timing, with where it comes from. Nothing under the just-noticeable
 * difference is ever shown as a fault, and the limits lie outside what professionals of this music do.
 */

/** One limit. `status`: read in the source; recalled from it; or chosen here and measured by the tests named. */
export interface Limit {
  readonly value: number;
  readonly unit: 'ms' | 'share of a step' | 'share of strokes' | 'MIDI velocity' | 'ms per cycle';
  readonly source: string;
  readonly status: 'published' | 'published, from memory' | 'common practice' | 'our design value';
}

const FRIBERG = 'A. Friberg and J. Sundberg, "Time discrimination in a monotonic, isochronous sequence", JASA 98, 1995, abstract';
const SON = 'three son performances, IEMP Cuban Son and Salsa corpus (Poole, Tarsitani, Clayton 2018–19), measured by us';
const OURS = 'chosen here; figures in tests/practice';

const limit = (value: number, unit: Limit['unit'], source: string, status: Limit['status']): Limit => ({ value, unit, source, status });

/** The limits by name. */
export const LIMITS = {
  /** Smallest shift that is noticed in an even series, for steps under 240 ms … */
  noticeableMs: limit(6, 'ms', FRIBERG, 'published'),
  /** … and for longer steps. */
  noticeableShare: limit(0.025, 'share of a step', FRIBERG, 'published'),
  /** Notes this close are one stroke: the smaller of the two. Order of two onsets is told apart beyond 22 to 60 ms (CHARM Mazurka Project). */
  gatherMs: limit(40, 'ms', OURS, 'our design value'),
  gatherShare: limit(0.3, 'share of a step', OURS, 'our design value'),
  /** Further off than this it is another stroke. */
  reach: limit(0.56, 'share of a step', OURS, 'our design value'),
  /** A single stroke is called early or late beyond this share, within the two bounds. Professionals spread 18 to 27 ms about their own places. */
  offShare: limit(0.3, 'share of a step', SON, 'our design value'),
  offLeastMs: limit(45, 'ms', SON, 'our design value'),
  offMostMs: limit(70, 'ms', SON, 'our design value'),
  /** A constant lag up to here is an offset; beyond it, and beyond most of a step, the pattern is displaced. */
  offsetMostMs: limit(
    80,
    'ms',
    'delays of wired inputs and taps ahead of a click stay below it (Repp 2005 for the latter)',
    'our design value',
  ),
  /** Spread (standard deviation) beyond this share of a step, and beyond the bound, is worth a word; professionals: 10 to 27 ms. */
  unevenShare: limit(0.16, 'share of a step', SON, 'our design value'),
  unevenLeastMs: limit(36, 'ms', SON, 'our design value'),
  /** One step's mean off the others' by more than this; professionals: up to 27 ms. */
  stepOffShare: limit(0.2, 'share of a step', SON, 'our design value'),
  stepOffLeastMs: limit(45, 'ms', SON, 'our design value'),
  /** Offbeats later than this share of a step against the beats: swung. Triplet swing is 0.33; professionals play them early. */
  swung: limit(0.15, 'share of a step', 'common practice, no source', 'common practice'),
  swungLeastMs: limit(20, 'ms', 'hands of a son group lie within it (see offShare)', 'our design value'),
  /** Calibrated and this far ahead or behind all the time; taps come early on average by some tens of ms. */
  offsetMs: limit(40, 'ms', 'B. H. Repp, Psychonomic Bulletin & Review 12, 2005, for the phenomenon', 'our design value'),
  /** Gain or loss against the band in each clave cycle. A tempo change of 2.65 % between two seconds is noticed (CHARM Mazurka Project). */
  driftMsPerCycle: limit(8, 'ms per cycle', OURS, 'our design value'),
  /** Left hand against right, mean. 22 ms is told apart by 75 % (CHARM Mazurka Project). */
  handsApartMs: limit(30, 'ms', 'common practice, no source', 'common practice'),
  /** Length of a stroke that must ring over a silent downbeat. */
  ringSteps: limit(1.5, 'share of a step', 'common practice, no source', 'common practice'),
  /** Octaves at least this much louder than inner notes. */
  innerApart: limit(5, 'MIDI velocity', 'common practice, no source', 'common practice'),
} as const satisfies Readonly<Record<string, Limit>>;

/** The smallest shift anyone notices in steps of this length, in milliseconds. Example: `noticeableMs(150)` is 6, `noticeableMs(400)` is 10. */
export const noticeableMs = (stepMs: number): number => Math.max(LIMITS.noticeableMs.value, LIMITS.noticeableShare.value * stepMs);

/** How far a single stroke may be off before it is called early or late, in milliseconds. Example: `strokeOffMs(200)` is 60. */
export const strokeOffMs = (stepMs: number): number =>
  Math.max(LIMITS.offLeastMs.value, Math.min(LIMITS.offMostMs.value, LIMITS.offShare.value * stepMs));

/** Notes within this of the first are one stroke, in milliseconds. Example: `gatherMs(107)` is 32. */
export const gatherMs = (stepMs: number): number => Math.min(LIMITS.gatherMs.value, LIMITS.gatherShare.value * stepMs);
