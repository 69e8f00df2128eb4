import type { Pcm } from './pcm';

/*
 * Bending and changing of rate by a windowed sinc, all of a sound at once. A piece of music strikes the same few keys thousands of
 * times, so each bent sound is made once and then only added up. Frame 0 stays frame 0: an onset never moves.
 */

/** Zero crossings of the sinc on each side. */
const CROSSINGS = 12;
/** Rows of the table between one frame and the next; between rows it is interpolated. */
const ROWS = 512;
/** Kaiser window, beta 8: side lobes about 80 dB down. */
const BETA = 8;

/** `sound` read `step` times as fast, where 1 leaves it as it is: `step` = playback rate × its frames a second ÷ those of the output. */
export function bent({ frames }: Pick<Pcm, 'frames'>, step: number): Float32Array {
  if (Math.abs(step - 1) < 1e-9) return frames;
  const length = Math.max(1, Math.ceil(frames.length / step));
  const out = new Float32Array(length);
  // Read faster, what would lie above the new half rate is taken away first.
  const cutoff = Math.min(1, 1 / step) * 0.97;
  const reach = Math.ceil(CROSSINGS / cutoff);
  const taps = 2 * reach + 1;
  const phases = phasesOf(cutoff, reach, taps);
  for (let index = 0; index < length; index += 1) {
    const at = index * step;
    const middle = Math.floor(at);
    const phase = (at - middle) * ROWS;
    const row = Math.floor(phase);
    const share = phase - row;
    const begin = middle - reach;
    const first = Math.max(0, -begin);
    const last = Math.min(taps - 1, frames.length - 1 - begin);
    const below = row * taps;
    const above = below + taps;
    let [one, other] = [0, 0];
    for (let tap = first; tap <= last; tap += 1) {
      const frame = frames[begin + tap] as number;
      one += frame * (phases[below + tap] as number);
      other += frame * (phases[above + tap] as number);
    }
    out[index] = (one + (other - one) * share) * cutoff;
  }
  return out;
}

/**
 * The weights of the frames around a place, for each of the places between one frame and the next: how far the place lies from its frame is
 * the same for all taps, so they are looked up once a step and not once a tap.
 */
function phasesOf(cutoff: number, reach: number, taps: number): Float64Array {
  const phases = new Float64Array((ROWS + 1) * taps);
  for (let row = 0; row <= ROWS; row += 1)
    for (let tap = 0; tap < taps; tap += 1) phases[row * taps + tap] = kernel((tap - reach - row / ROWS) * cutoff);
  return phases;
}

function kernel(place: number): number {
  const row = Math.abs(place) * ROWS;
  const low = Math.floor(row);
  const below = TABLE[low] ?? 0;
  return below + ((TABLE[low + 1] ?? 0) - below) * (row - low);
}

const TABLE = Float64Array.from({ length: CROSSINGS * ROWS + 2 }, (_, row) => {
  const place = row / ROWS;
  if (place >= CROSSINGS) return 0;
  const sinc = place === 0 ? 1 : Math.sin(Math.PI * place) / (Math.PI * place);
  return (sinc * bessel(BETA * Math.sqrt(1 - (place / CROSSINGS) ** 2))) / bessel(BETA);
});

/** Modified Bessel function of the first kind, order 0, by its power series. */
function bessel(value: number): number {
  let sum = 1;
  let term = 1;
  for (let n = 1; n < 40; n += 1) {
    term *= (value / (2 * n)) ** 2;
    sum += term;
  }
  return sum;
}
