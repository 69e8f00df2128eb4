/** What a pedal (or any key) can be given to do, whether or not single keys are switched on. */
export const PEDAL_ACTIONS = ['forward', 'back', 'play or stop'] as const;
/** One of them. */
export type PedalAction = (typeof PEDAL_ACTIONS)[number];

/** The quiet hints of the first minutes, in the order in which they come. */
export const HINTS = ['press play', 'touch a note', 'exchange the sides'] as const;
/** One of them. */
export type Hint = (typeof HINTS)[number];

/** When the percussion has rows of its own. */
export const ROWS = ['where there is room', 'always', 'never'] as const;
