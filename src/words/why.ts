import type { SoundingBar } from '../music/chart/chart';
import type { Stroke } from '../vocabulary';
import { DEFAULT_LANGUAGE, type Language } from './language';
import { whyInEnglish } from './why-english';
import { type WhyFacts, whyFacts } from './why-facts';

const SENTENCES: Readonly<Record<Language, (facts: WhyFacts) => string>> = { en: whyInEnglish };

/**
 * Why a stroke of piano or bass is what it is, in words: what its notes are, where the line came from, where it is struck and how far
 * ahead of its chord. `bars` are the bars of the score the stroke belongs to. Throws when no bar holds the stroke.
 */
export function whyStroke(stroke: Stroke, bars: readonly SoundingBar[], language: Language = DEFAULT_LANGUAGE): string {
  return SENTENCES[language](whyFacts(stroke, bars));
}
