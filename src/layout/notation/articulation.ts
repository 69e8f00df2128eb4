import { type Stroke, TICKS_PER_STEP } from '../../vocabulary';
import type { Articulation } from './notation';

/** From this share of its notated length downwards a note is marked as short, from that upwards as held. */
const SHORT = 0.6;
const HELD = 0.9;
/** What is held at least a quarter, without a tie to say so, is marked. */
const LONG = 2 * TICKS_PER_STEP;

/** What is known of a stroke's place: whether the band strikes with it, and whether a tie over the barline shows its length. */
export interface StrokePlace {
  readonly withBand: boolean;
  readonly tied: boolean;
  /** Accents on 1 and the & of 4 belong to figures in 4/4. */
  readonly fourFour: boolean;
}

/**
 * The signs over a stroke. What the whole band strikes takes a marcato; of the figure, 1 of the 2-side and the & of 4 are accented (published:
 * Keyboard Magazine 2017, "accents on 1 and & of 4"); a note much shorter than written takes a dot, a long one that is held without a tie a line
 * (common practice, no source). Inner notes are never accented.
 */
export function articulationsOf(stroke: Stroke, place: StrokePlace): Articulation[] {
  const share = stroke.soundingTicks / stroke.durationTicks;
  const outer = stroke.role === 'octave' || stroke.role === 'chord' || stroke.role === 'single';
  const { step, side } = stroke.reason;
  const strong = place.fourFour && outer && ((step === 0 && side === 2) || step === 7);
  const length: Articulation[] =
    share <= SHORT ? ['staccato'] : share >= HELD && stroke.durationTicks >= LONG && !place.tied ? ['tenuto'] : [];
  return [...length, ...(place.withBand ? (['marcato'] as const) : strong ? (['accent'] as const) : [])];
}
