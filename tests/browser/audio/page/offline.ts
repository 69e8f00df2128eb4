import { loadBank, makeBank } from '../../../../src/audio/load-samples';
import { startLookAhead } from '../../../../src/audio/look-ahead';
import type { Mixer } from '../../../../src/audio/mixer';
import { createMixer } from '../../../../src/audio/mixer';
import type { PartName } from '../../../../src/performance/performance';
import { INSTRUMENTS } from '../../../../src/performance/sounds/sample-set';
import type { Mix } from '../../../../src/state/ports';
import { audioSeconds, halfNotesPerMinute } from '../../../../src/vocabulary';
import { montuno } from './montuno';

/* Renders the mixer without a device and measures what came out. */

export const RATE = 48_000;
export const FOLDER = new URL('samples/', document.baseURI).href;

/** The app's default balance (src/state/settings.ts), typed here so that a change there shows in the levels here. */
export function mixOf(muted: readonly PartName[] = [], more: Partial<Mix> = {}): Mix {
  const part = (name: PartName, level: number) => ({ level, muted: muted.includes(name) });
  return {
    parts: {
      'piano right': part('piano right', 0.8),
      'piano left': part('piano left', 0.7),
      bass: part('bass', 0.7),
      clave: part('clave', 0.65),
      pulse: part('pulse', 0.35),
      percussion: part('percussion', 0.5),
    },
    ceiling: 0.7,
    tuningCents: 0,
    ...more,
  };
}

export const PARTS: readonly PartName[] = ['piano right', 'piano left', 'bass', 'clave', 'pulse', 'percussion'];
export const allBut = (...kept: readonly PartName[]) => PARTS.filter((part) => !kept.includes(part));

export type Sounds = 'recorded' | 'made' | 'impulse';

async function fill(mixer: Mixer, context: BaseAudioContext, sounds: Sounds): Promise<void> {
  const impulse = new AudioBuffer({ length: 64, numberOfChannels: 1, sampleRate: context.sampleRate });
  impulse.getChannelData(0)[0] = 0.5;
  for (const instrument of INSTRUMENTS) {
    const loaded = sounds === 'recorded' ? await loadBank(instrument, FOLDER, (bytes) => context.decodeAudioData(bytes)) : null;
    if (loaded?.kind === 'failed') throw new Error(`${loaded.file}: ${loaded.why}`);
    if (loaded?.kind === 'loaded') mixer.takeBank(instrument, loaded.bank);
    else if (sounds === 'made') mixer.takeBank(instrument, makeBank(instrument));
    else mixer.takeBank(instrument, [{ buffer: impulse, midi: instrument === 'drums' ? null : 60, drum: 'clave', velocity: 100 }]);
  }
}

/** Renders what `schedule` asks of a mixer; `at` are moments (seconds) at which `then` acts while it runs. */
export async function offline(
  seconds: number,
  sounds: Sounds,
  mix: Mix,
  schedule: (mixer: Mixer) => void,
  acts: readonly { readonly at: number; readonly act: (mixer: Mixer) => void }[] = [],
): Promise<Float32Array> {
  const context = new OfflineAudioContext(1, Math.round(seconds * RATE), RATE);
  const mixer = createMixer(context);
  await fill(mixer, context, sounds);
  mixer.setMix(mix);
  schedule(mixer);
  for (const { at, act } of acts)
    void context.suspend(at).then(() => {
      act(mixer);
      void context.resume();
    });
  return (await context.startRendering()).getChannelData(0);
}

/** Two cycles of a full band at a tempo, from 0.1 s. */
export function band(tempo: number) {
  return (mixer: Mixer): number => {
    const look = startLookAhead(
      { performance: montuno(), fromTick: 0, tempo: halfNotesPerMinute(tempo), countInBars: 0 },
      audioSeconds(0.1),
    );
    const sounds = look.advance(audioSeconds(0.1 + (8 * 60) / tempo));
    for (const { event, at, seconds } of sounds) mixer.start(event, at, seconds);
    return sounds.length;
  };
}

export const peakOf = (frames: Float32Array) => frames.reduce((high, value) => Math.max(high, Math.abs(value)), 0);
export const rmsOf = (frames: Float32Array) => Math.sqrt(frames.reduce((sum, value) => sum + value * value, 0) / frames.length);
export const decibels = (value: number) => 20 * Math.log10(Math.max(value, 1e-9));
export const bytesOf = (frames: Float32Array): string => {
  const bytes = new Uint8Array(frames.buffer, frames.byteOffset, frames.byteLength);
  let text = '';
  for (let index = 0; index < bytes.length; index += 32_768) text += String.fromCharCode(...bytes.subarray(index, index + 32_768));
  return btoa(text);
};

export function frequency(frames: Float32Array): number {
  // The fundamental's rising crossings of a heavily smoothed wave.
  let smooth = 0;
  let last = 0;
  const crossings: number[] = [];
  for (let index = 0; index < frames.length; index += 1) {
    smooth += ((frames[index] ?? 0) - smooth) * 0.02;
    if (last < 0 && smooth >= 0) crossings.push(index - smooth / (smooth - last));
    last = smooth;
  }
  return ((crossings.length - 1) * RATE) / ((crossings.at(-1) ?? 0) - (crossings[0] ?? 0));
}
