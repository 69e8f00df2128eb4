import type { Hands } from '../../vocabulary';
import { WIDE_FROM } from './hands';

/** Where the lower octave notes of a figure are best heard, on average (60 to 76 is usual, 67 to 79 in a loud band: common practice, no source). */
const MIDDLE = 68.5;
/** Lowest and highest lower octave note; the upper one is 12 above. */
const LOWEST = 58;
const HIGHEST = 82;

/**
 * The MIDI note of pitch 0: the whole figure is placed once, by whole octaves, so that its octave line lies nearest to the middle
 * of the range, or above G4 where the left hand plays two octaves below.
 */
export function octaveFor(line: readonly number[], tonicPc: number, hands: Hands): number {
  if (line.length === 0) return 60 + tonicPc;
  const mean = line.reduce((sum, pitch) => sum + pitch, 0) / line.length;
  const lowest = Math.min(...bounded(line));
  const highest = Math.max(...bounded(line));
  const from = hands === 'wide' ? WIDE_FROM : LOWEST;
  const choices = [48, 60, 72].map((octave) => octave + tonicPc);
  const cost = (tonic: number): number =>
    Math.abs(tonic + mean - MIDDLE) + 4 * Math.max(0, from - tonic - lowest) + 4 * Math.max(0, tonic + highest - HIGHEST);
  return choices.reduce((best, tonic) => (cost(tonic) < cost(best) ? tonic : best));
}

/** Spreading a very long list into Math.min would overflow the stack; a line repeats few pitches. */
const bounded = (line: readonly number[]): readonly number[] => [...new Set(line)];
