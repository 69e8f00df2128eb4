import type { Score } from '../../music/score';
import type { Feel } from '../../performance/feel';
import { perform } from '../../performance/perform';
import type { PartName, Performance } from '../../performance/performance';
import { FIRST_LEVELS } from '../../performance/sounds/first-levels';
import type { WavOptions } from './wav-plan';

/** Who is heard in a play-along. */
export const PLAY_ALONGS = ['full', 'without-piano', 'piano-only'] as const;
export type PlayAlong = (typeof PLAY_ALONGS)[number];

/** Levels of the parts, 0 for silent ones. */
export type PartLevels = WavOptions['levels'];

/** The mix that a player finds at first: everyone but the pulse. */
export const PLAIN_LEVELS: PartLevels = { ...FIRST_LEVELS, pulse: 0 };

const isPiano = (part: string): boolean => part === 'piano right' || part === 'piano left';

/** `levels` with those silent who do not play in this play-along; a silenced piano plays in the ones that are about it. */
export function levelsFor(kind: PlayAlong, levels: PartLevels): PartLevels {
  const silent = levels['piano right'] === 0 && levels['piano left'] === 0;
  const level = (part: PartName): number => {
    if (kind === 'without-piano' && isPiano(part)) return 0;
    if (kind === 'piano-only' && !isPiano(part)) return 0;
    return isPiano(part) && silent ? FIRST_LEVELS[part] : levels[part];
  };
  return Object.fromEntries((Object.keys(levels) as PartName[]).map((part) => [part, level(part)])) as PartLevels;
}

/** How a play-along goes: a loop without a seam, or counted in, once through and rung out. */
export type PlayAlongForm = 'loop' | 'once';

/** Seconds for the last notes to ring out. */
export const RING_SECONDS = 3;

/** A score as a play-along sounds it: gone round as a loop, or once through with a last stroke. */
export function playAlongPerformance(score: Score, form: PlayAlongForm, feel?: Feel): Performance {
  return perform(score, {
    sounding: { right: true, left: true },
    pulse: 'halves',
    ending: form === 'once',
    ...(feel === undefined ? {} : { feel }),
  });
}

/** What `mixWav` needs to know of a play-along's form. */
export function playAlongOptions(form: PlayAlongForm): Pick<WavOptions, 'countInBars' | 'passes' | 'end'> {
  return form === 'loop' ? { countInBars: 0, passes: 1, end: 'loop' } : { countInBars: 2, passes: 1, end: RING_SECONDS };
}
