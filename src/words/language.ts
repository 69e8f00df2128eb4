/** The languages that sentences are written in. Every table of words is keyed by it, so that one more language is one more row. */
export type Language = 'en';

/** The language in force where none is named. */
export const DEFAULT_LANGUAGE: Language = 'en';
