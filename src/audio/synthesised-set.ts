/*
 * Sounds made by rule, so that Play never waits for a file: a struck string, a plucked bass, wood, skin and metal, and
 * the pulse, which is always made here. Pure arithmetic on sample frames; the players bend them like recordings.
 */

/** Frames per second of everything made here. */
export const SYNTHESISED_RATE = 24_000;

interface Partial {
  /** Multiple of the fundamental, or hertz for a drum. */
  readonly at: number;
  readonly level: number;
  /** Seconds in which it falls to about a third. */
  readonly decay: number;
}

/** Peaks that match the recordings' (see `sample-set.ts`), so that the balance stays when files arrive. */
const PIANO_PEAK = 0.11;
const BASS_PEAK = 0.28;

/** A struck string at a MIDI pitch: stretched partials that die the faster the higher they are, and a short knock. */
export function pianoTone(midi: number): Float32Array {
  const hertz = 440 * 2 ** ((midi - 69) / 12);
  const ring = 1.3 * 2 ** ((60 - midi) / 30);
  const partials = [1, 2, 3, 4, 5, 6, 7].map((n) => ({
    at: hertz * n * Math.sqrt(1 + 0.0004 * n * n),
    level: [1, 0.6, 0.42, 0.24, 0.16, 0.1, 0.07][n - 1] ?? 0,
    decay: ring / (0.6 + 0.4 * n),
  }));
  return shaped(partials, 0.06, 2, PIANO_PEAK, 0.002);
}

/** A plucked string at a MIDI pitch, round, with its octave and twelfth for small loudspeakers. */
export function bassTone(midi: number): Float32Array {
  const hertz = 440 * 2 ** ((midi - 69) / 12);
  const partials = [1, 2, 3, 4, 5].map((n) => ({ at: hertz * n, level: [1, 0.7, 0.4, 0.2, 0.1][n - 1] ?? 0, decay: 0.9 / n ** 0.8 }));
  return shaped(partials, 0.03, 1.6, BASS_PEAK, 0.004);
}

/** Recipes of the unpitched sounds: modes in hertz, the share of noise, seconds, and peak. */
const DRUMS: Readonly<
  Record<string, { readonly partials: readonly Partial[]; readonly noise: number; readonly seconds: number; readonly peak: number }>
> = {
  clave: {
    partials: [
      { at: 2500, level: 1, decay: 0.022 },
      { at: 2540, level: 0.4, decay: 0.03 },
    ],
    noise: 0.05,
    seconds: 0.2,
    peak: 0.47,
  },
  'pulse high': {
    partials: [
      { at: 1100, level: 1, decay: 0.012 },
      { at: 1660, level: 0.4, decay: 0.008 },
    ],
    noise: 0.04,
    seconds: 0.1,
    peak: 0.45,
  },
  'pulse low': {
    partials: [
      { at: 780, level: 1, decay: 0.012 },
      { at: 1180, level: 0.4, decay: 0.008 },
    ],
    noise: 0.04,
    seconds: 0.1,
    peak: 0.4,
  },
  shell: {
    partials: [
      { at: 1800, level: 0.6, decay: 0.02 },
      { at: 3100, level: 0.4, decay: 0.015 },
    ],
    noise: 0.4,
    seconds: 0.15,
    peak: 0.3,
  },
  bell: {
    partials: [
      { at: 587, level: 0.8, decay: 0.12 },
      { at: 845, level: 1, decay: 0.1 },
      { at: 1980, level: 0.3, decay: 0.05 },
    ],
    noise: 0.05,
    seconds: 0.5,
    peak: 0.34,
  },
  'conga open': {
    partials: [
      { at: 220, level: 1, decay: 0.16 },
      { at: 460, level: 0.3, decay: 0.06 },
    ],
    noise: 0.08,
    seconds: 0.6,
    peak: 0.3,
  },
  'conga slap': {
    partials: [
      { at: 330, level: 0.6, decay: 0.03 },
      { at: 900, level: 0.6, decay: 0.02 },
    ],
    noise: 0.5,
    seconds: 0.2,
    peak: 0.3,
  },
  'conga low': {
    partials: [
      { at: 165, level: 1, decay: 0.2 },
      { at: 340, level: 0.3, decay: 0.07 },
    ],
    noise: 0.08,
    seconds: 0.7,
    peak: 0.3,
  },
  'bongo high': {
    partials: [
      { at: 420, level: 1, decay: 0.07 },
      { at: 800, level: 0.4, decay: 0.03 },
    ],
    noise: 0.1,
    seconds: 0.3,
    peak: 0.3,
  },
  'bongo low': {
    partials: [
      { at: 300, level: 1, decay: 0.09 },
      { at: 580, level: 0.4, decay: 0.04 },
    ],
    noise: 0.1,
    seconds: 0.3,
    peak: 0.3,
  },
  'timbal high': {
    partials: [
      { at: 310, level: 1, decay: 0.12 },
      { at: 640, level: 0.5, decay: 0.07 },
    ],
    noise: 0.2,
    seconds: 0.5,
    peak: 0.3,
  },
  'timbal low': {
    partials: [
      { at: 210, level: 1, decay: 0.15 },
      { at: 430, level: 0.5, decay: 0.08 },
    ],
    noise: 0.2,
    seconds: 0.6,
    peak: 0.3,
  },
  maracas: { partials: [], noise: 1, seconds: 0.08, peak: 0.25 },
  'guiro short': { partials: [], noise: 1, seconds: 0.12, peak: 0.2 },
  'guiro long': { partials: [], noise: 1, seconds: 0.4, peak: 0.2 },
};

/** Names of the unpitched sounds. */
export const DRUM_NAMES: readonly string[] = Object.keys(DRUMS);

/** An unpitched sound by name (one of `DRUM_NAMES`; anything else sounds as the shell). */
export function drumTone(name: string): Float32Array {
  const recipe = DRUMS[name] ?? DRUMS.shell;
  return recipe === undefined ? new Float32Array(1) : shaped(recipe.partials, recipe.noise, recipe.seconds, recipe.peak, 0.0005);
}

/** Sums decaying partials and a burst of noise, with a soft attack and a faded end, scaled to `peak`. */
function shaped(partials: readonly Partial[], noise: number, seconds: number, peak: number, attack: number): Float32Array {
  const length = Math.round(seconds * SYNTHESISED_RATE);
  const frames = new Float32Array(length);
  for (const { at, level, decay } of partials) {
    if (at >= SYNTHESISED_RATE / 2) continue;
    const turn = (2 * Math.PI * at) / SYNTHESISED_RATE;
    const fall = Math.exp(-1 / (decay * SYNTHESISED_RATE));
    // A rotating vector: two multiplications a frame instead of a sine.
    const [cosine, sine] = [Math.cos(turn) * fall, Math.sin(turn) * fall];
    let [x, y] = [level, 0];
    for (let index = 0; index < length; index += 1) {
      frames[index] = (frames[index] ?? 0) + y;
      [x, y] = [x * cosine - y * sine, x * sine + y * cosine];
    }
  }
  // With nothing but noise the burst lasts as long as the sound; beside partials it is the knock of the attack.
  const noiseDecay = partials.length === 0 ? seconds / 4 : 0.006;
  let seed = 1;
  for (let index = 0; index < length && noise > 0; index += 1) {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) | 0;
    frames[index] = (frames[index] ?? 0) + noise * (seed / 2 ** 31) * Math.exp(-index / (noiseDecay * SYNTHESISED_RATE));
  }
  const attackFrames = Math.max(1, Math.round(attack * SYNTHESISED_RATE));
  const endFrames = Math.round(0.1 * length);
  let high = 0;
  for (let index = 0; index < length; index += 1) {
    const edge = Math.min(1, index / attackFrames, (length - 1 - index) / endFrames);
    frames[index] = (frames[index] ?? 0) * edge;
    high = Math.max(high, Math.abs(frames[index] ?? 0));
  }
  return high === 0 ? frames : frames.map((value) => (value * peak) / high);
}
