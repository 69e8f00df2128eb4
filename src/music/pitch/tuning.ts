/**
 * Frequency in hertz of a MIDI note (fractions allowed) in twelve-tone equal temperament.
 * MIDI 69 is A4; `a4` is its frequency, 440 by ISO 16:1975. `hertzOf(60)` is 261.6256 to four places.
 */
export const hertzOf = (midi: number, a4 = 440): number => a4 * 2 ** ((midi - 69) / 12);
