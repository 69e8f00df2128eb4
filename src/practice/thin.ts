import { assert } from '../vocabulary';

/*
 * Sound at about 8,000 samples a second: enough for the clicks of the band (700 to 3,000 Hz), and a sixth of the work. A low pass of
 * finite length (a sinc under a Hann window), worked out only where a sample is kept.
 */

/** Keeps one sample in `every` of a stream that comes in blocks. */
export interface Thinner {
  /** Frames of the stream to one of what is kept. */
  readonly every: number;
  /** Takes the next block; what is kept of it is written into `kept` from `from` on. Returns how many were written. Allocates nothing. */
  push(block: Float32Array, kept: Float32Array, from: number): number;
  /** Begins anew: the next sample of the stream is kept. */
  reset(): void;
}

const WANTED_RATE = 8000;
/** Taps of the low pass to every sample that is left out. */
const TAPS_PER_SAMPLE = 8;
/** Where the low pass lets half through, as a share of the new rate. */
const CUT = 0.42;

/** Frames of a stream of `rate` frames a second that become one. */
const everyOf = (rate: number): number => Math.max(1, Math.round(rate / WANTED_RATE));

/** Samples a second of what is kept of such a stream. */
export const keptRate = (rate: number): number => rate / everyOf(rate);

/** A thinner for a stream of `rate` frames a second. What it keeps is late by half of its length, the same for every stream of that rate. */
export function createThinner(rate: number): Thinner {
  const every = everyOf(rate);
  const taps = lowPass(every);
  const past = new Float64Array(taps.length);
  let filled = 0;
  const sumAt = (): number => {
    let sum = 0;
    for (let tap = 0; tap < taps.length; tap += 1)
      sum += (taps[tap] ?? 0) * (past[(filled - 1 - tap + 2 * taps.length) % taps.length] ?? 0);
    return sum;
  };
  let left = 0;
  return {
    every,
    push(block, kept, from) {
      let written = 0;
      for (const sample of block) {
        past[filled] = sample;
        filled = (filled + 1) % taps.length;
        if (left === 0) {
          kept[from + written] = sumAt();
          written += 1;
          left = every;
        }
        left -= 1;
      }
      return written;
    },
    reset() {
      past.fill(0);
      left = 0;
    },
  };
}

/** A whole sound of `rate` frames a second as a thinner for `forRate` would keep it. */
export function thinned(sound: Float32Array, rate: number, forRate: number): Float32Array {
  assert(rate > 0 && forRate > 0, `rates must be above 0, got ${rate} and ${forRate}`);
  const even = new Float32Array(Math.floor((sound.length * forRate) / rate));
  for (let frame = 0; frame < even.length; frame += 1) {
    const place = (frame * rate) / forRate;
    const before = Math.floor(place);
    const [first, second] = [sound[before] ?? 0, sound[before + 1] ?? 0];
    even[frame] = first + (second - first) * (place - before);
  }
  const thinner = createThinner(forRate);
  const kept = new Float32Array(Math.ceil(even.length / thinner.every));
  thinner.push(even, kept, 0);
  return kept;
}

function lowPass(every: number): Float64Array {
  const length = every * TAPS_PER_SAMPLE + 1;
  const taps = new Float64Array(length);
  let sum = 0;
  for (let tap = 0; tap < length; tap += 1) {
    const x = (2 * Math.PI * CUT * (tap - (length - 1) / 2)) / every;
    const hann = 0.5 - 0.5 * Math.cos((2 * Math.PI * (tap + 1)) / (length + 1));
    taps[tap] = (x === 0 ? 1 : Math.sin(x) / x) * hann;
    sum += taps[tap] ?? 0;
  }
  return taps.map((tap) => tap / sum);
}
