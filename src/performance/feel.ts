import type { Score } from '../music/score';
import { countLeading, TICKS_PER_STEP } from '../vocabulary';
import type { PartName } from './performance';

/*
 * Feel says how far off its notated place each stroke sounds, by instrument and by step of the clave cycle counted from the
 * 2-side, so that it falls on the right side in both directions. Straight is the rule; the measured feel is what three
 * performances of a son group did, and is switched on by the player. It never reaches notation.
 */

/** The instruments whose timing was measured. */
export type FeelVoice = 'clave' | 'bass' | 'tres' | 'bongo' | 'bell' | 'conga';

/** How strokes lie off their notated places. */
export interface Feel {
  readonly name: 'straight' | 'measured';
  /** Milliseconds (negative: early) for the sixteen steps from the 2-side's first; instruments that are missing are straight. */
  readonly millis: Partial<Readonly<Record<FeelVoice, readonly number[]>>>;
  /** Length of a step in the performances, in milliseconds: what the milliseconds are scaled by. */
  readonly stepMillis: number;
}

/** Everything exactly where it is written. */
export const STRAIGHT: Feel = { name: 'straight', millis: {}, stepMillis: 1 };

/**
 * Mean deviation from the evenly divided step, less the ensemble's mean, in three live son performances; 0 where fewer than twenty
 * onsets were found. Each figure has a standard error of 1 to 4 ms. Source: onset times of the IEMP Cuban Son and Salsa corpus
 * (A. Poole, S. Tarsitani, M. Clayton, 2018–19), as carried by onsetsync 0.5.1 (T. Eerola). The tres is the piano's ancestor; its
 * timing is applied to the piano. One step lasted 181, 220 and 130 ms: 177 on average.
 */
export const MEASURED: Feel = {
  name: 'measured',
  millis: {
    clave: [0, 0, -4, 0, 24, 0, 0, 0, 17, 0, 0, 2, 0, 0, -2, -3],
    bass: [13, 0, -7, -4, 11, 1, -13, -6, 27, -14, -14, -2, 12, 4, -15, -7],
    tres: [1, -3, -20, -6, 4, 1, -12, -13, 5, -15, -15, -14, 1, -15, -20, -14],
    bongo: [8, -4, -6, 0, 13, 5, -8, 4, 14, -3, -1, 4, 15, -4, -11, 1],
    bell: [9, 0, -2, 0, 18, 0, -7, 3, 10, 2, -9, -4, 7, 0, -7, 1],
    conga: [9, 9, -6, 2, 23, -1, -5, 5, 15, 2, -12, -7, 10, -7, -13, -9],
  },
  stepMillis: 177,
};

/** The feel of a name. */
export const feelNamed = (name: Feel['name']): Feel => (name === 'measured' ? MEASURED : STRAIGHT);

/** The measured instrument that a part is timed like, or null for parts without one: they stay straight. */
export function voiceOf(part: PartName, drum: string | null): FeelVoice | null {
  if (part === 'piano right' || part === 'piano left') return 'tres';
  if (part === 'bass' || part === 'clave') return part;
  if (part !== 'percussion' || drum === null) return null;
  if (drum.startsWith('bongo bell') || drum.startsWith('mambo bell') || drum.startsWith('cha-cha bell')) return 'bell';
  if (drum.startsWith('bongo')) return 'bongo';
  return drum.startsWith('conga') ? 'conga' : null;
}

/**
 * Ticks (negative: early) by which a stroke is off its place. The same share of a step at every tempo, so slow music moves by more
 * milliseconds than fast; at most a sixth of a step, so that strokes of one part never change places.
 */
export function offsetTicks(feel: Feel, voice: FeelVoice | null, stepFromTwoSide: number | null): number {
  if (voice === null || stepFromTwoSide === null) return 0;
  const millis = feel.millis[voice]?.[stepFromTwoSide] ?? 0;
  const most = TICKS_PER_STEP / 6;
  return Math.round(Math.max(-most, Math.min(most, (millis / feel.stepMillis) * TICKS_PER_STEP)));
}

/** The step of a tick counted from the start of the 2-side, in 4/4; null in 6/8, which was not measured, and outside the bars. */
export function stepFromTwoSide(score: Pick<Score, 'bars' | 'meter'>, tick: number): number | null {
  const bar = barOf(score.bars, tick);
  if (bar === undefined || score.meter !== '4/4') return null;
  const within = (bar.cycleStep % 8) + Math.floor((tick - bar.tick) / TICKS_PER_STEP);
  const onStartSide = Math.floor(within / 8) % 2 === 0;
  return (onStartSide === (bar.side === 2) ? 0 : 8) + (within % 8);
}

/** The bar that holds a tick; bars are ascending. */
export function barOf(bars: Score['bars'], tick: number): Score['bars'][number] | undefined {
  const bar = bars[countLeading(bars, ({ tick: from }) => from <= tick) - 1];
  return bar !== undefined && tick < bar.tick + bar.ticks ? bar : undefined;
}
