import { TICKS_PER_STEP } from '../../vocabulary';
import { barred, type HarmonicTimeline, type HarmonySpan, spanAt } from './timeline';

/** Whose chord a stroke takes: the span, and how many ticks ahead of the stroke it was looked up. */
export interface Lead {
  readonly span: HarmonySpan;
  readonly ticks: 0 | 240 | 480;
}

/**
 * The piano's chord for a stroke at `tick`.
 * An offbeat directly before a change takes the new chord, an eighth early (common practice, no source). A stroke on beat 4
 * that ends its cell takes the next bar's chord, a quarter early, with the bass. Neither looks across a barrier.
 * Returns undefined where there is nothing to play.
 */
export function pianoLead(
  timeline: HarmonicTimeline,
  tick: number,
  place: { readonly offbeat: boolean; readonly endsOnFour: boolean },
): Lead | undefined {
  const here = spanAt(timeline, tick);
  if (!here) return undefined;
  if (timeline.asPlayed) return { span: here, ticks: 0 };
  if (place.offbeat && !barred(timeline, tick, TICKS_PER_STEP)) {
    const next = spanAt(timeline, tick + TICKS_PER_STEP);
    if (next?.chord && next.symbol !== here.symbol) return { span: next, ticks: 240 };
  }
  // A chord written on beat 4 is played there, by piano and bass alike.
  if (place.endsOnFour && here.tick !== tick && !barred(timeline, tick, 2 * TICKS_PER_STEP)) {
    const next = spanAt(timeline, tick + 2 * TICKS_PER_STEP);
    if (next?.chord) return { span: next, ticks: 480 };
  }
  return { span: here, ticks: 0 };
}
