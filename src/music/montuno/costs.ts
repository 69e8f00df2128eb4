import type { Colour, Degree } from '../../vocabulary';

/**
 * What the voice-leading search pays for, in whole points. A row's reason says why it costs.
 * All rows are judgements of craft (common practice, no source) and are tuned against the figures that the engine must reach.
 */
export const COSTS = {
  /** Octave line, by semitones moved: a slow guide-tone line stays or steps. */
  octaveMove: [0, 2, 4, 17, 26, 40, 90, 110, 130, 150, 170, 190, 210],
  /** Per semitone that an inner note moves: common tones stay inside. */
  innerMove: 1,
  /** A hand that gains or loses an inner note. */
  innerCount: 8,
  /** Inner interval by semitones: thirds and fourths lie best, then sixths, fifths and tritones; seconds only when nothing else is left. */
  innerInterval: [99, 99, 24, 0, 0, 0, 5, 4, 4, 4, 12, 30],
  /** An inner note a whole tone from the thumb or the little finger. */
  besideOctave: 3,
  /** A missing third or seventh (or sixth): the chord does not tell which it is. */
  missingTelling: 70,
  /** The same where only inner notes are struck: a chord of one stroke says as much as two notes can. */
  missingInside: 14,
  /** A written ♯11 that is not struck; another written alteration that is not, where there is one of them, is missed less. */
  missingSharpEleven: 60,
  missingAlteration: 6,
  /** A sixth without the fifth on a major chord. */
  bareSixth: { free: 0, cheap: 3, dear: 30 },
  /** Inner notes that cost this much more than the best ones over the same octave are not offered to the search at all. */
  worthOffering: 20,
  /** A single inner note where two were asked for. */
  oneInner: 25,
  /** Octave further than this from the middle of the figure, per semitone beyond it. */
  register: { free: 5, perSemitone: 3 },
  /** Not following the active moving line. */
  offTheLine: 45,
  /** An octave note that the figure before this one had on the same chord ("another one"). */
  sameAgain: 16,
  /** Not opening on the kind of degree that was asked for ("another one"). */
  offTheOpening: 120,
} as const;

/** What a degree costs as the octave note, by colour: guide tones lead in jazz, the triad in dance music. */
export function octaveDegreeCost(degree: Degree, kind: 'third' | 'seventh' | 'body' | 'tension', colour: Colour): number {
  if (kind === 'third') return 0;
  if (kind === 'seventh') return degree === '6' ? 4 : 0;
  if (kind === 'tension') return 30;
  if (colour === 'plain') return degree === '1' ? 2 : 2;
  return degree === '1' ? 6 : 5;
}

/** What a degree costs inside the hand. */
export function innerDegreeCost(
  degree: Degree,
  kind: 'third' | 'seventh' | 'body' | 'tension',
  octaveKind: 'third' | 'seventh' | 'body' | 'tension',
): number {
  if (kind === 'third' || kind === 'seventh') return 0;
  if (kind === 'tension') return octaveKind === 'third' ? 0 : 3;
  return degree === '1' ? 2 : 1;
}
