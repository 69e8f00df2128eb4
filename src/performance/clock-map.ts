import type { AudioSeconds, InputMillis } from '../vocabulary';
import { assert, audioSeconds, inputMillis } from '../vocabulary';

/*
 * The audio device and the clock that stamps keys run at slightly different rates (tens of parts in a million), and
 * readings jitter. A line through readings taken together maps one to the other.
 */

/** Both clocks, read at the same moment. */
export interface ClockPair {
  readonly audio: AudioSeconds;
  readonly input: InputMillis;
}

/** input = middle.input + (audio − middle.audio) × millisPerSecond */
export interface ClockMap {
  readonly middle: ClockPair;
  readonly millisPerSecond: number;
}

/** Readings closer together than this cannot tell a rate from jitter. */
const SHORTEST_SPAN_SECONDS = 2;
/** No real pair of clocks is further apart than this (1 in 1,000); a steeper fit is a bad reading. */
const LARGEST_RATE_ERROR = 0.001;

/** The line that fits the readings best (least squares), or a line of equal rates when they span too little. Throws on none. */
export function fitClocks(pairs: readonly ClockPair[]): ClockMap {
  assert(pairs.length > 0, 'a clock map needs at least one pair of readings');
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const audio = mean(pairs.map((pair) => pair.audio));
  const input = mean(pairs.map((pair) => pair.input));
  const middle = { audio: audioSeconds(audio), input: inputMillis(input) };
  const times = pairs.map((pair) => pair.audio);
  const span = times.reduce((high, value) => Math.max(high, value), audio) - times.reduce((low, value) => Math.min(low, value), audio);
  if (span < SHORTEST_SPAN_SECONDS) return { middle, millisPerSecond: 1000 };
  let products = 0;
  let squares = 0;
  for (const pair of pairs) {
    products += (pair.audio - audio) * (pair.input - input);
    squares += (pair.audio - audio) ** 2;
  }
  const rate = products / squares;
  return { middle, millisPerSecond: Math.abs(rate / 1000 - 1) <= LARGEST_RATE_ERROR ? rate : 1000 };
}

/** When a moment of the audio clock was, on the input clock. */
export function toInput(map: ClockMap, at: AudioSeconds): InputMillis {
  return inputMillis(map.middle.input + (at - map.middle.audio) * map.millisPerSecond);
}

/** When a moment of the input clock was, on the audio clock. */
export function toAudio(map: ClockMap, at: InputMillis): AudioSeconds {
  return audioSeconds(map.middle.audio + (at - map.middle.input) / map.millisPerSecond);
}
