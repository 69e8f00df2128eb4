import type { Performance } from '../../performance/performance';
import { COUNT_IN_GAIN, PART_GAIN, RELEASE_SECONDS, SHORTEST_NOTE_SECONDS } from '../../performance/sounds/balance';
import { CEILING_LIMIT, underCeiling } from '../../performance/sounds/ceiling';
import { instrumentOf, pickSound } from '../../performance/sounds/sound-bank';
import { bent } from './bend';
import type { Pcm, SoundSet } from './pcm';
import { WAV_FRAME_BYTES, WAV_HEADER_BYTES, type WavRate, wavHeader } from './wav-header';
import { type PlannedSound, planWav, type WavOptions } from './wav-plan';

/*
 * A plain mixer: every sound of the plan is picked and bent as the player does it, added up frame by frame, brought under the same
 * ceiling and written as 16-bit stereo, a second at a time, so that a file of any length takes the same memory. The parts of the
 * live sound stand in the middle, so both channels hold the same.
 */

/** A file that comes in pieces: its length is known before the first. */
export interface WavStream {
  readonly bytes: number;
  /** The head, then a second of music each; what is given is not used again here. */
  readonly chunks: Generator<Uint8Array<ArrayBuffer>, void, undefined>;
}

/** Highest peak of any file: 1 dB below full scale (needs of programs that convert it further). */
export const WAV_PEAK = 10 ** (-1 / 20);
/** What the ceiling lets through is scaled to that peak. */
const LOUDNESS = (WAV_PEAK * 0.9999) / CEILING_LIMIT;
const FULL_SCALE = 32_767;
/** A file that is cut where notes still sound fades over this long. */
const CUT_SECONDS = 0.01;

interface Voice {
  readonly from: number;
  readonly to: number;
  readonly frames: Float32Array;
  readonly gain: number;
  /** Frames after `from` at which it is let go, and how many it then fades for. */
  readonly held: number;
  readonly fade: number;
}

/** Sounds that were bent, kept between the files of a pack: the same keys come again in every one. */
export type BentSounds = Map<Pcm, Map<number, Float32Array>>;

/** The sound of a performance as a WAV file. Pure: the same music and sounds always give the same bytes. */
export function mixWav(performance: Performance, options: WavOptions, sounds: SoundSet, kept: BentSounds = new Map()): WavStream {
  const plan = planWav(performance, options);
  const voices = plan.sounds.flatMap((sound): Voice[] => {
    const voice = voiceOf(sound, options, sounds, kept);
    if (voice === null) return [];
    // What rings past the end of a loop is heard at its start, however short the loop is.
    const again: Voice[] = [];
    const { foldedAfter } = plan;
    if (foldedAfter !== null && foldedAfter > 0)
      for (let back = foldedAfter; voice.to > back; back += foldedAfter)
        again.push({ ...voice, from: voice.from - back, to: voice.to - back });
    return [voice, ...again];
  });
  voices.sort((a, b) => a.from - b.from);
  const cut = options.end === 'loop' && plan.foldedAfter === null;
  return { bytes: WAV_HEADER_BYTES + plan.frames * WAV_FRAME_BYTES, chunks: chunksOf(voices, plan.frames, options, cut) };
}

function voiceOf({ event, countIn, frame, seconds }: PlannedSound, options: WavOptions, sounds: SoundSet, kept: BentSounds): Voice | null {
  const level = countIn ? COUNT_IN_GAIN : PART_GAIN[event.part] * options.levels[event.part];
  if (level === 0) return null;
  const instrument = instrumentOf(event);
  const picked = pickSound(sounds[instrument], event);
  if (picked === null) return null;
  const tuned = picked.rate * 2 ** ((options.tuningCents ?? 0) / 1200);
  const frames = bentOnce(picked.buffer, (tuned * picked.buffer.rate) / options.rate, kept);
  const framesOf = (time: number): number => Math.round(time * options.rate);
  const held = instrument === 'drums' ? frames.length : framesOf(Math.max(SHORTEST_NOTE_SECONDS, seconds));
  const fade = framesOf(RELEASE_SECONDS[instrument]);
  return { from: frame, to: frame + Math.min(frames.length, held + fade), frames, gain: picked.gain * level, held, fade };
}

function bentOnce(sound: Pcm, step: number, kept: BentSounds): Float32Array {
  const bySteps = kept.get(sound) ?? new Map<number, Float32Array>();
  kept.set(sound, bySteps);
  const frames = bySteps.get(step) ?? bent(sound, step);
  bySteps.set(step, frames);
  return frames;
}

function* chunksOf(
  voices: readonly Voice[],
  length: number,
  { rate, dither = false }: { readonly rate: WavRate; readonly dither?: boolean },
  cut: boolean,
): Generator<Uint8Array<ArrayBuffer>, void, undefined> {
  yield wavHeader(length, rate) as Uint8Array<ArrayBuffer>;
  let next = 0;
  let sounding: Voice[] = [];
  const noise = noiseOf();
  const fadeFrames = Math.round(CUT_SECONDS * rate);
  for (let start = 0; start < length; start += rate) {
    const end = Math.min(length, start + rate);
    for (let voice = voices[next]; voice !== undefined && voice.from < end; voice = voices[next]) {
      sounding.push(voice);
      next += 1;
    }
    const sum = new Float32Array(end - start);
    for (const voice of sounding) add(voice, sum, start, end);
    sounding = sounding.filter((voice) => voice.to > end);
    const bytes = new Uint8Array((end - start) * WAV_FRAME_BYTES);
    const view = new DataView(bytes.buffer);
    for (let index = 0; index < sum.length; index += 1) {
      const left = cut ? Math.min(1, (length - 1 - start - index) / fadeFrames) : 1;
      const value = underCeiling(sum[index] ?? 0) * LOUDNESS * left * FULL_SCALE;
      const whole = Math.round(dither ? value + noise() : value);
      view.setInt16(index * 4, whole, true);
      view.setInt16(index * 4 + 2, whole, true);
    }
    yield bytes;
  }
}

/** Adds the part of a voice that lies in [start, end). */
function add({ from, to, frames, gain, held, fade }: Voice, sum: Float32Array, start: number, end: number): void {
  const first = Math.max(from, start);
  const last = Math.min(to, end);
  const released = Math.min(last, from + held);
  for (let at = first; at < released; at += 1) sum[at - start] = (sum[at - start] ?? 0) + (frames[at - from] ?? 0) * gain;
  for (let at = Math.max(first, released); at < last; at += 1)
    sum[at - start] = (sum[at - start] ?? 0) + (frames[at - from] ?? 0) * gain * (1 - (at - from - held) / fade);
}

/** Noise of triangular distribution, −1 to 1, always the same. */
function noiseOf(): () => number {
  let seed = 1;
  const uniform = (): number => {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) | 0;
    return seed / 2 ** 32;
  };
  return () => uniform() + uniform();
}
