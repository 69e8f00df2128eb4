/*
 * Which sound serves a stroke of the percussion. Events are named by instrument and kind of stroke (`conga open low`); sounds are
 * the drums of `sample-set.ts`, recorded or made by rule.
 */

/** Sound by stroke, one row a stroke that percussion parts can hold. */
export const PERCUSSION_SOUNDS: Readonly<Record<string, string>> = {
  'cascara accent': 'shell',
  'cascara plain': 'shell',
  'mambo bell accent': 'mambo bell',
  'mambo bell plain': 'mambo bell',
  'cha-cha bell plain': 'cha-cha bell',
  'bell accent': 'bell',
  'bell plain': 'bell',
  'timbales muffled': 'timbal muffled',
  'timbales open': 'timbal low',
  'timbales accent': 'timbal high',
  'timbales rimshot': 'timbal rim',
  'timbales roll': 'timbal high',
  'bongo bell mouth': 'bongo bell mouth',
  'bongo bell neck': 'bongo bell neck',
  'bongo accent': 'bongo high',
  'bongo thumb': 'bongo thumb',
  'bongo fingers': 'bongo fingers',
  'bongo low': 'bongo low',
  'conga heel': 'conga heel',
  'conga toe': 'conga toe',
  'conga slap': 'conga slap',
  'conga soft slap': 'conga slap',
  'conga open': 'conga open',
  'conga soft open': 'conga open',
  'conga accent': 'conga open',
  'conga open low': 'conga low',
  'guiro long scrape': 'guiro long',
  'guiro short scrape': 'guiro short',
  'maracas accent': 'maracas',
  'maracas plain': 'maracas',
};

/** Words that serve a stroke without a row; a longer entry goes before a shorter one. */
const WORDS: readonly (readonly [words: readonly string[], sound: string])[] = [
  [['conga', 'slap'], 'conga slap'],
  [['conga', 'low'], 'conga low'],
  [['conga'], 'conga open'],
  [['tumba'], 'conga low'],
  [['bongo', 'bell'], 'bongo bell mouth'],
  [['bongo', 'low'], 'bongo low'],
  [['bongo'], 'bongo high'],
  [['timbal', 'bell'], 'bell'],
  [['timbal', 'low'], 'timbal low'],
  [['timbal'], 'timbal high'],
  [['bell'], 'bell'],
  [['campana'], 'bell'],
  [['maraca'], 'maracas'],
  [['iro', 'long'], 'guiro long'],
  [['iro'], 'guiro short'],
];

/** The sound that serves a stroke, or null where not a word of its name is known. */
export const percussionSound = (stroke: string): string | null =>
  PERCUSSION_SOUNDS[stroke] ?? WORDS.find(([words]) => words.every((word) => stroke.includes(word)))?.[1] ?? null;
