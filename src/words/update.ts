/** What the page says when a new version of it waits. */
export const UPDATE_WORDS = {
  waits: 'A new version is ready.',
  take: 'Use it now',
} as const;
