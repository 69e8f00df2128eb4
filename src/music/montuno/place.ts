import type { Compass, Hands } from '../../vocabulary';
import { WIDE_FROM } from './hands';

/** Where the lower octave notes of a figure are best heard, on average (60 to 76 is usual, 67 to 79 in a loud band: common practice, no source). */
const MIDDLE = 68.5;
/** Lowest and highest lower octave note; the upper one is 12 above. */
const LOWEST = 58;
const HIGHEST = 82;
/** The same where a device lifts the hand by an octave: its top then stays at G6. */
const HIGHEST_LIFTED = 67;
/** Lowest where a device lifts the right hand: the left one then stays above G2. */
const LOWEST_LIFTED = 55;

/** Lowest and highest key of an instrument, MIDI: makers' usual ranges (49 and 61 keys from C2, 76 from E1, 88 from A0; common practice, no source). */
export const KEYBOARDS: Readonly<Record<Compass, { readonly from: number; readonly to: number }>> = {
  49: { from: 36, to: 84 },
  61: { from: 36, to: 96 },
  76: { from: 28, to: 103 },
  88: { from: 21, to: 108 },
};

/**
 * The MIDI note of pitch 0: the whole figure is placed once, by whole octaves, so that its octave line lies nearest to the middle
 * of the range, or above G4 where the left hand plays two octaves below, and on the keys of the instrument.
 */
export function octaveFor(line: readonly number[], tonicPc: number, hands: Hands, compass: Compass, lifted: boolean): number {
  if (line.length === 0) return 60 + tonicPc;
  const mean = line.reduce((sum, pitch) => sum + pitch, 0) / line.length;
  // Spreading a very long list into Math.min would overflow the stack; a line repeats few pitches.
  const pitches = [...new Set(line)];
  const lowest = Math.min(...pitches);
  const highest = Math.max(...pitches);
  const from = hands === 'wide' ? WIDE_FROM : lifted ? LOWEST_LIFTED : LOWEST;
  const top = Math.min(lifted ? HIGHEST_LIFTED : HIGHEST, KEYBOARDS[compass].to - 12);
  const below = hands === 'wide' ? 20 : 4;
  const choices = [48, 60, 72].map((octave) => octave + tonicPc);
  const cost = (tonic: number): number =>
    Math.abs(tonic + mean - (lifted ? MIDDLE - 6 : MIDDLE)) +
    below * Math.max(0, from - tonic - lowest) +
    4 * Math.max(0, tonic + highest - top) +
    (tonic + highest + 12 > KEYBOARDS[compass].to ? 100 : 0);
  return choices.reduce((best, tonic) => (cost(tonic) < cost(best) ? tonic : best));
}
