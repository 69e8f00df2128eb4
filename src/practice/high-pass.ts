/** A filter that goes through samples in place of its own, without allocating. */
export interface SampleFilter {
  /** Filters `input[from]` to `input[to − 1]` into the beginning of `output`, which must have room for them. */
  run(input: Float32Array, from: number, to: number, output: Float64Array): void;
  reset(): void;
}

/** Qualities of the two sections of a Butterworth filter of fourth order. */
const QUALITIES = [0.5411961, 1.306563] as const;

/**
 * A high pass of fourth order (two second-order sections in the way of Butterworth, R. Bristow-Johnson's "Cookbook formulae for audio
 * EQ biquad filter coefficients"); `hertz` is where it is 3 dB down.
 */
export function highPass(sampleRate: number, hertz: number): SampleFilter {
  const [first, second] = QUALITIES.map((quality) => coefficients(sampleRate, hertz, quality));
  if (!first || !second) throw new Error('two sections');
  const state = new Float64Array(8);
  return {
    run(input, from, to, output) {
      for (let index = from; index < to; index += 1) output[index - from] = input[index] ?? 0;
      pass(output, to - from, first, state, 0);
      pass(output, to - from, second, state, 4);
    },
    reset() {
      state.fill(0);
    },
  };
}

interface Section {
  readonly b0: number;
  readonly b1: number;
  readonly a1: number;
  readonly a2: number;
}

function coefficients(sampleRate: number, hertz: number, quality: number): Section {
  const angle = (2 * Math.PI * hertz) / sampleRate;
  const alpha = Math.sin(angle) / (2 * quality);
  const scale = 1 / (1 + alpha);
  const b0 = ((1 + Math.cos(angle)) / 2) * scale;
  return { b0, b1: -2 * b0, a1: -2 * Math.cos(angle) * scale, a2: (1 - alpha) * scale };
}

function pass(samples: Float64Array, length: number, { b0, b1, a1, a2 }: Section, state: Float64Array, at: number): void {
  let x1 = state[at] ?? 0;
  let x2 = state[at + 1] ?? 0;
  let y1 = state[at + 2] ?? 0;
  let y2 = state[at + 3] ?? 0;
  for (let index = 0; index < length; index += 1) {
    const x = samples[index] ?? 0;
    const y = b0 * (x + x2) + b1 * x1 - a1 * y1 - a2 * y2;
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
    samples[index] = y;
  }
  state[at] = x1;
  state[at + 1] = x2;
  // Tiny values would slow the arithmetic down on some processors.
  state[at + 2] = Math.abs(y1) < 1e-20 ? 0 : y1;
  state[at + 3] = Math.abs(y2) < 1e-20 ? 0 : y2;
}
