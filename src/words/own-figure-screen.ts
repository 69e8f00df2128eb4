import type { Direction } from '../vocabulary';

/** What the field for a rhythm of the player's own says. */
export const OWN_FIGURE_SCREEN = {
  name: (direction: Direction): string => `Your own rhythm, two bars in ${direction}: x strikes, . rests`,
  play: 'Play it',
  off: 'Back to the level’s figure',
  expected: (expected: string): string => `Expected ${expected}`,
} as const;

/** When a change is heard, said once for the whole sheet. */
export const HEARD_FROM = 'What you change here while the music plays is heard from the next cycle on.';

/** What the changes made by hand say. */
export const EDIT_SCREEN = {
  name: 'Changes by hand',
  count: (changes: number): string => (changes === 1 ? '1 change by hand' : `${changes} changes by hand`),
  undo: 'Undo',
  redo: 'Redo',
  reset: 'Take all back',
} as const;

/** What the choice of percussion says. */
export const PERCUSSION_SCREEN = {
  chosen: 'chosen',
  name: 'What plays',
} as const;

/** The button that makes a style's usual tempo the goal. */
export const usualTempoWords = (tempo: number, unit: 'half' | 'quarter'): string =>
  `Its usual tempo as the goal: ${tempo} ${unit === 'half' ? 'half' : 'quarter'} notes`;
