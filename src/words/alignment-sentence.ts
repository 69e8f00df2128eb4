import type { Alignment, AlignmentReason } from '../music/clave/alignment';
import { SPOKEN } from './spoken';

/**
 * Why a rhythm states a direction, or none, in one sentence. Example: "It sounds on 1 and 2 of the 2-side and stays off the beat on the 3-side."
 */
export const alignmentSentence = (found: Alignment): string => ALIGNMENT_WORDS.sentence(found);

/** The sentence about a rhythm. */
export const ALIGNMENT_WORDS = { sentence: (found: Alignment): string => inEnglish(found) } as const;

const NOTES: Readonly<Record<NonNullable<AlignmentReason['note']>, string>> = {
  'no strokes': 'It has no strokes, so it states no direction.',
  'equal bars': 'Both of its bars are the same, so it states no direction.',
  'six-eight by name only': 'It is none of the 6/8 rhythms known by name, and others are not judged.',
};

function inEnglish({ states, score, reason }: Alignment): string {
  if (reason.name !== null) {
    return states === 'neutral'
      ? `It is the ${reason.name}, which states no direction.`
      : `It is the ${reason.name} as played in ${states}.`;
  }
  if (reason.note) return NOTES[reason.note];
  const why = bothSides(reason);
  return states === 'neutral'
    ? `It leans to ${score > 0 ? '2-3' : '3-2'}, but not clearly: ${why}.`
    : `${why.charAt(0).toUpperCase()}${why.slice(1)}.`;
}

/** `it sounds on 1 of the 2-side and stays off 2 of the 3-side`, or, when a side does both, `on the 2-side it sounds on 1 but not on 4; …`. */
function bothSides(reason: AlignmentReason): string {
  const sides = [
    { name: 'the 2-side', sounds: reason.twoSideSounds, silent: reason.twoSideSilent },
    { name: 'the 3-side', sounds: reason.threeSideSounds, silent: reason.threeSideSilent },
  ].filter(({ sounds, silent }) => sounds.length + silent.length > 0);
  if (sides.some(({ sounds, silent }) => sounds.length > 0 && silent.length > 0)) {
    return sides.map(({ name, sounds, silent }) => `on ${name} it ${deeds(sounds, silent)}`).join('; ');
  }
  const clauses = sides.map(({ name, sounds, silent }) => `${deeds(sounds, silent)} ${offBeat(silent) ? 'on' : 'of'} ${name}`);
  return `it ${clauses.join(' and ')}`;
}

function deeds(sounds: readonly number[], silent: readonly number[]): string {
  if (silent.length === 0) return `sounds on ${counts(sounds)}`;
  const off = offBeat(silent) ? 'the beat' : counts(silent);
  if (sounds.length === 0) return `stays off ${off}`;
  return `sounds on ${counts(sounds)} but ${offBeat(silent) ? 'never' : 'not'} on ${off}`;
}

/** Beats first, then the offbeats together: `1, 4 and the &s of 2 and 3`. */
function counts(steps: readonly number[]): string {
  const sorted = [...steps].sort((a, b) => a - b);
  const beats = sorted.filter((step) => step % 2 === 0).map((step) => SPOKEN.count(step, false));
  const between = sorted.filter((step) => step % 2 === 1);
  const only = between[0];
  const offs =
    only === undefined
      ? []
      : between.length === 1
        ? [SPOKEN.count(only, false)]
        : [`the &s of ${SPOKEN.list(between.map((step) => String((step + 1) / 2)))}`];
  return SPOKEN.list([...beats, ...offs]);
}

const BEATS = [0, 2, 4, 6];
const offBeat = (silent: readonly number[]): boolean => silent.length === BEATS.length && BEATS.every((beat) => silent.includes(beat));
