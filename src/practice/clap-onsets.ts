import { highPass } from './high-pass';

/*
 * Claps and taps in a stream of samples, by our own method, block by block and without allocating.
 *
 * A clap is broad-band and sudden. Two high-passed copies of the signal are measured in hops of about 1.4 ms: one above voices and room
 * rumble, one above the pitch of clicks, blocks and claves. An onset is a hop whose energy stands out from the learned floor of the
 * room, from the last twenty milliseconds (what rings or hisses in slowly does not), from the fading echo of the last clap, and from a
 * fraction of how loud claps have been. Twenty milliseconds later it is known whether it was one: enough of its beginning lies in the
 * upper band (a click from the loudspeaker is a tone), and it is over again (a hiss has swollen). Its frame is the first sample that reaches a quarter of the peak.
 */

/** Finds claps and taps in a stream of audio blocks. Made for an audio worklet: `push` allocates nothing. */
export interface ClapOnsets {
  /**
   * Takes the next block (any length; 128 in a worklet), whose first sample is frame `startFrame` of the audio clock. Returns how many
   * onsets were found in it; read them from `frames` and `strengths` before the next call. Moments are given with their true frame,
   * up to about 25 ms before the block in which they become certain. A gap between blocks starts the detector again.
   */
  push(block: Float32Array, startFrame: number): number;
  /** Frames of the onsets of the last block. */
  readonly frames: Float64Array;
  /** Their strengths, 0 to 1. */
  readonly strengths: Float32Array;
  /** False in the first moments, while the level of the room is being learned. */
  readonly ready: boolean;
}

/** Milliseconds, hertz and ratios of energy; chosen on the synthesised rooms of tests/practice/clap-onsets.test.ts. */
const TUNING = {
  lowerHz: 2000,
  upperHz: 5500,
  learnMs: 150,
  /** No second clap within this; two eighths at 120 half notes a minute are 125 ms apart. */
  restMs: 65,
  overFloor: 2.7,
  overBefore: 2.7,
  /** Part of the last clap's energy that its echo is granted at once, and how fast that fades. */
  echoShare: 0.12,
  echoMs: 45,
  /** Energy below this share of how loud claps have been is something else. */
  overUsual: 0.05,
  usualMs: 8000,
  /** At most this share of a clap's energy is left 16 to 21 ms after it begins; a hiss has swollen by then. */
  leftLate: 0.35,
  /** A rise by this much while another is being judged takes its place. */
  overCandidate: 4,
  /** Share of the energy that must lie in the upper band. */
  upperShare: 0.2,
  /** Quietest clap, as mean square of the lower band: about −66 dB of full scale. */
  quietest: 2.5e-7,
  strengthGain: 3,
} as const;

const HOP = 64;
/** Hops kept: about 90 ms. A power of two. */
const HOPS = 64;
/** Hops from the first of an onset until it is judged, those that are its beginning, those by which a clap is over, and the stretch before it. */
const JUDGE_HOPS = 15;
const BEGIN_HOPS = 3;
const OVER_HOPS = 4;
const BEFORE = { from: 3, to: 17 } as const;
/** Samples kept to find the first of the onset. A power of two. */
const SAMPLES = 2048;
const MOST_PER_BLOCK = 64;

/** A detector for a stream of `sampleRate` frames a second (44,100 and 48,000 are tested). */
export function createClapOnsets(sampleRate: number): ClapOnsets {
  const lower = highPass(sampleRate, TUNING.lowerHz);
  const upper = highPass(sampleRate, TUNING.upperHz);
  const hopMs = (1000 * HOP) / sampleRate;
  const learnHops = Math.ceil(TUNING.learnMs / hopMs);
  const restHops = Math.ceil(TUNING.restMs / hopMs);
  const echoFade = Math.exp(-hopMs / TUNING.echoMs);
  const usualFade = Math.exp(-hopMs / TUNING.usualMs);
  const floorRise = 1 - Math.exp(-hopMs / 1200);
  const floorFall = 1 - Math.exp(-hopMs / 120);
  const frames = new Float64Array(MOST_PER_BLOCK);
  const strengths = new Float32Array(MOST_PER_BLOCK);
  const lowerEnergy = new Float64Array(HOPS);
  const upperEnergy = new Float64Array(HOPS);
  const samples = new Float32Array(SAMPLES);
  const low = new Float64Array(HOP);
  const high = new Float64Array(HOP);
  let nextFrame = Number.NaN;
  let hops = 0;
  let filled = 0;
  let sumLower = 0;
  let sumUpper = 0;
  let floor = 0;
  let echo = 0;
  let usual = 0;
  let candidate = -1;
  let quietUntil = 0;
  let ready = false;

  function reset(): void {
    lower.reset();
    upper.reset();
    lowerEnergy.fill(0);
    upperEnergy.fill(0);
    samples.fill(0);
    hops = filled = sumLower = sumUpper = floor = echo = quietUntil = 0;
    candidate = -1;
    ready = false;
  }

  /** Energy of the hop `back` hops ago, 0 being the last. */
  const lowerAt = (back: number): number => lowerEnergy[(hops - 1 - back) & (HOPS - 1)] ?? 0;

  /** Energy of the upper band in the hop `back` hops ago. */
  const upperAt = (back: number): number => upperEnergy[(hops - 1 - back) & (HOPS - 1)] ?? 0;

  function learn(energy: number): void {
    floor = hops === 1 ? energy : floor + (energy - floor) / hops;
    ready = hops >= learnHops;
  }

  function stands(energy: number, energyAt: (back: number) => number): boolean {
    if (energy < TUNING.quietest || energy < TUNING.overFloor * floor || energy < TUNING.overUsual * usual || energy < echo) return false;
    let before = 0;
    for (let back = BEFORE.from; back <= BEFORE.to; back += 1) before += energyAt(back);
    return energy * (BEFORE.to - BEFORE.from + 1) >= TUNING.overBefore * before;
  }

  /** Whether the candidate is a clap: broad from its first hops on, and over by now. */
  function judged(): boolean {
    let all = 0;
    let above = 0;
    let late = 0;
    for (let back = JUDGE_HOPS - BEGIN_HOPS; back <= JUDGE_HOPS; back += 1) {
      all += lowerAt(back);
      above += upperAt(back);
    }
    for (let back = 0; back < OVER_HOPS; back += 1) late += lowerAt(back) / OVER_HOPS;
    return above >= TUNING.upperShare * all && late - floor <= TUNING.leftLate * (strongest() - floor);
  }

  /** Energy of the candidate's strongest hop so far. */
  function strongest(): number {
    let energy = 0;
    for (let back = hops - 1 - candidate; back >= 0; back -= 1) energy = Math.max(energy, lowerAt(back));
    return energy;
  }

  /** True when the last hop is far stronger in a band than the candidate has been: a clap upon a click, which is strong in the lower band alone. */
  function overtakes(energyAt: (back: number) => number): boolean {
    let before = 0;
    for (let back = hops - 1 - candidate; back > 0; back -= 1) before = Math.max(before, energyAt(back));
    return stands(energyAt(0), energyAt) && energyAt(0) > TUNING.overCandidate * before;
  }

  /** Notes the onset of the candidate; `endFrame` is the frame after the last hop. */
  function note(endFrame: number, found: number): number {
    const span = (JUDGE_HOPS + 2) * HOP;
    let peak = 0;
    const energy = strongest();
    for (let back = 0; back < span; back += 1) peak = Math.max(peak, Math.abs(samples[(filled - 1 - back) & (SAMPLES - 1)] ?? 0));
    let first = span - 1;
    while (first > 0 && Math.abs(samples[(filled - 1 - first) & (SAMPLES - 1)] ?? 0) < peak / 4) first -= 1;
    echo = TUNING.echoShare * energy;
    usual = usual === 0 ? energy : usual + 0.3 * (energy - usual);
    quietUntil = candidate + restHops;
    if (found >= MOST_PER_BLOCK) return found;
    frames[found] = endFrame - 1 - first;
    strengths[found] = Math.min(1, TUNING.strengthGain * Math.sqrt(energy));
    return found + 1;
  }

  /** Takes the hop that has just been filled; returns the number of onsets so far. */
  function hop(endFrame: number, found: number): number {
    const energy = sumLower / HOP;
    lowerEnergy[hops & (HOPS - 1)] = energy;
    upperEnergy[hops & (HOPS - 1)] = sumUpper / HOP;
    hops += 1;
    sumLower = sumUpper = 0;
    echo *= echoFade;
    usual *= usualFade;
    if (!ready) {
      learn(energy);
      return found;
    }
    let count = found;
    if (candidate >= 0) {
      if (hops - 1 - candidate >= JUDGE_HOPS) {
        if (judged()) count = note(endFrame, found);
        else quietUntil = hops;
        candidate = -1;
      } else if (hops - 1 - candidate > BEGIN_HOPS && (overtakes(lowerAt) || overtakes(upperAt))) candidate = hops - 1;
    } else if (hops - 1 >= quietUntil && (stands(energy, lowerAt) || stands(upperAt(0), upperAt))) candidate = hops - 1;
    const heard = Math.min(energy, 3 * floor + TUNING.quietest);
    floor += (heard > floor ? floorRise : floorFall) * (heard - floor);
    return count;
  }

  return {
    frames,
    strengths,
    get ready() {
      return ready;
    },
    push(block, startFrame) {
      if (startFrame !== nextFrame) reset();
      nextFrame = startFrame + block.length;
      let found = 0;
      for (let from = 0; from < block.length; ) {
        const to = Math.min(block.length, from + HOP - (filled % HOP));
        lower.run(block, from, to, low);
        upper.run(block, from, to, high);
        for (let index = 0; index < to - from; index += 1) {
          const sample = low[index] ?? 0;
          const above = high[index] ?? 0;
          samples[(filled + index) & (SAMPLES - 1)] = sample;
          sumLower += sample * sample;
          sumUpper += above * above;
        }
        filled += to - from;
        from = to;
        if (filled % HOP === 0) found = hop(startFrame + to, found);
      }
      return found;
    },
  };
}
