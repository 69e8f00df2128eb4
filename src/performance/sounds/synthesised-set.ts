/*
 * Sounds made by rule, so that Play never waits for a file: a struck string, a plucked bass, wood, skin and metal, and
 * the pulse, which is always made here. Pure arithmetic on sample frames; the players bend them like recordings.
 */

import { DRUM_RECIPES, type Mode } from './drum-recipes';

/** Frames per second of everything made here. */
export const SYNTHESISED_RATE = 24_000;

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

/** Names of the unpitched sounds. */
export const DRUM_NAMES: readonly string[] = Object.keys(DRUM_RECIPES);

/** An unpitched sound by name (one of `DRUM_NAMES`; anything else sounds as the shell). */
export function drumTone(name: string): Float32Array {
  const recipe = DRUM_RECIPES[name] ?? DRUM_RECIPES.shell;
  return recipe === undefined ? new Float32Array(1) : shaped(recipe.partials, recipe.noise, recipe.seconds, recipe.peak, 0.0005);
}

/** Sums decaying partials and a burst of noise, with a soft attack and a faded end, scaled to `peak`. */
function shaped(partials: readonly Mode[], noise: number, seconds: number, peak: number, attack: number): Float32Array {
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
