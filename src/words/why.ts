import type { SoundingBar } from '../music/chart/chart';
import type { Stroke } from '../vocabulary';
import { whyInEnglish } from './why-english';
import { type WhyFacts, whyFacts } from './why-facts';

/** The sentence about a stroke. */
export const WHY_WORDS = { sentence: (facts: WhyFacts): string => whyInEnglish(facts) } as const;

/**
 * Why a stroke of piano or bass is what it is, in words: what its notes are, where the line came from, where it is struck and how far
 * ahead of its chord. `bars` are the bars of the score the stroke belongs to. Throws when no bar holds the stroke.
 */
export function whyStroke(stroke: Stroke, bars: readonly SoundingBar[]): string {
  return WHY_WORDS.sentence(whyFacts(stroke, bars));
}
