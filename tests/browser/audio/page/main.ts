import type { MixerSound } from '../../../../src/audio/mixer';
import { createPlayer } from '../../../../src/audio/player';
import type { PartName } from '../../../../src/performance/performance';
import { BASS_SAMPLES, DRUM_SAMPLES, PIANO_SAMPLES } from '../../../../src/performance/sounds/sample-set';
import type { SoundOnItsWay } from '../../../../src/state/listening/ports';
import type { SoundState } from '../../../../src/state/ports';
import { halfNotesPerMinute } from '../../../../src/vocabulary';
import { PLAYER_CONTRACT } from '../../../audio/player-contract';
import { events, performanceOf } from '../../../performance/hand-made';
import type { Sounds } from './offline';
import { allBut, band, bytesOf, decibels, FOLDER, frequency, mixOf, offline, PARTS, peakOf, RATE, rmsOf } from './offline';
import { kit, STROKES } from './percussion';

const witnessed: SoundOnItsWay[] = [];
let player: ReturnType<typeof createPlayer> | null = null;
const soundHistory: SoundState[] = [];
const thePlayer = () => {
  if (player !== null) return player;
  const made = createPlayer({
    witness: (sound) => void witnessed.push(sound),
  });
  made.onChange(() => soundHistory.push(made.soundState()));
  player = made;
  return made;
};
const loop = () => performanceOf(2, events(...Array.from({ length: 16 }, (_, step) => ({ tick: step * 240 }))));
const drum = (name: string, part: PartName = 'clave'): MixerSound => ({ part, midi: null, drum: name, velocity: 100 });

/** The clock of the sound, once there is one. */
let clock: AudioContext | null = null;
const { AudioContext: Native } = window as { readonly AudioContext?: typeof AudioContext };
// A browser without sound stays without.
if (Native)
  window.AudioContext = class extends Native {
    constructor(options?: AudioContextOptions) {
      super(options);
      clock = this;
    }
  };
/** How long a sound that stands still is waited for. */
const PATIENCE_MS = 10_000;
/** Waits for so many seconds of the music: with too much to do the sound stands still now and then, and the music with it. */
async function wait(seconds: number): Promise<void> {
  const [here, from, began] = [clock, clock?.currentTime ?? 0, performance.now()];
  const sleep = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
  await sleep(seconds * 1000);
  while (here?.state === 'running' && here.currentTime - from < seconds && performance.now() - began < PATIENCE_MS) await sleep(10);
}

/** What the specs call. */
const bench = {
  clauses: PLAYER_CONTRACT.map(({ title }) => title),

  async clause(index: number): Promise<void> {
    const from = witnessed.length;
    const made = thePlayer();
    await PLAYER_CONTRACT[index]?.check({
      player: made,
      wait,
      sounds: () => witnessed.slice(from),
    });
    made.stop();
  },

  /** Where each recording begins: the first frame above a fiftieth of its peak, in seconds; and its peak. */
  async onsets(): Promise<{ file: string; onset: number; peak: number; seconds: number }[]> {
    const decoder = new OfflineAudioContext(1, 1, RATE);
    return Promise.all(
      [...PIANO_SAMPLES, ...BASS_SAMPLES, ...DRUM_SAMPLES].map(async ({ file }) => {
        const bytes = await (await fetch(new URL(file, FOLDER))).arrayBuffer();
        const buffer = await decoder.decodeAudioData(bytes);
        const frames = buffer.getChannelData(0);
        const peak = peakOf(frames);
        return {
          file,
          onset: frames.findIndex((value) => Math.abs(value) > peak / 50) / buffer.sampleRate,
          peak,
          seconds: buffer.duration,
        };
      }),
    );
  },

  /** Frames at which impulses come out when sounded at these frames, as drums and as notes at their own pitch. */
  async impulses(frames: readonly number[], midi: number | null, cents = 0): Promise<number[]> {
    const out = await offline(2, 'impulse', mixOf([], { tuningCents: cents }), (mixer) => {
      for (const frame of frames)
        mixer.start({ part: 'piano right', midi, drum: midi === null ? 'clave' : null, velocity: 100 }, frame / RATE, 0.2);
    });
    return [...out.keys()].filter((index) => Math.abs(out[index] ?? 0) > 0.01);
  },

  /** Levels in dB of the whole band and of each part alone, with the app's default mix. */
  async levels(sounds: Sounds, tempo: number): Promise<Record<string, { peak: number; rms: number }>> {
    const result: Record<string, { peak: number; rms: number }> = {};
    const seconds = 0.5 + (8 * 60) / tempo;
    for (const part of ['all', ...PARTS] as const) {
      const out = await offline(seconds, sounds, mixOf(part === 'all' ? [] : allBut(part)), (mixer) => void band(tempo)(mixer));
      result[part] = { peak: decibels(peakOf(out)), rms: decibels(rmsOf(out)) };
    }
    return result;
  },

  /** Levels in dB of four bars of a salsa kit alone, and of the whole band with it, with the app's default mix. */
  async percussion(sounds: Sounds, tempo: number, role: 'verse' | 'coro'): Promise<Record<'kit' | 'all', { peak: number; rms: number }>> {
    const seconds = 0.5 + (8 * 60) / tempo;
    const level = async (schedule: Parameters<typeof offline>[3]) => {
      const out = await offline(seconds, sounds, mixOf(), schedule);
      return { peak: decibels(peakOf(out)), rms: decibels(rmsOf(out)) };
    };
    return {
      kit: await level((mixer) => void kit(tempo, role)(mixer)),
      all: await level((mixer) => {
        band(tempo)(mixer);
        kit(tempo, role)(mixer);
      }),
    };
  },

  /** Peak in dB of every stroke that percussion can hold, one by one. */
  async strokes(sounds: Sounds): Promise<{ stroke: string; peak: number }[]> {
    const out = await offline(1 + STROKES.length, sounds, mixOf(), (mixer) => {
      for (const [index, stroke] of STROKES.entries())
        mixer.start({ part: 'percussion', midi: null, drum: stroke.drum, velocity: stroke.velocity }, 0.1 + index, 0.2);
    });
    return STROKES.map(({ drum: stroke }, index) => ({
      stroke,
      peak: decibels(peakOf(out.subarray(index * RATE, (index + 1) * RATE))),
    }));
  },

  async rendering(sounds: Sounds, tempo: number, kept: readonly PartName[] = PARTS): Promise<string> {
    return bytesOf(await offline(0.5 + (8 * 60) / tempo, sounds, mixOf(allBut(...kept)), (mixer) => void band(tempo)(mixer)));
  },

  /** Stops the band at 1 s: what still sounds after 50 ms, and the steepest step between frames before and during the fade. */
  async stopped(sounds: Sounds): Promise<{ before: number; after: number; steepestBefore: number; steepestDuring: number; left: number }> {
    let left = -1;
    const out = await offline(3, sounds, mixOf(), (mixer) => void band(100)(mixer), [
      { at: 1, act: (mixer) => mixer.silence() },
      {
        at: 1.6,
        act: (mixer) => {
          mixer.tick();
          left = mixer.voices();
        },
      },
    ]);
    const stop = RATE;
    const steepest = (from: number, to: number) => {
      let high = 0;
      for (let index = from; index < to; index += 1) high = Math.max(high, Math.abs((out[index] ?? 0) - (out[index - 1] ?? 0)));
      return high;
    };
    return {
      before: peakOf(out.subarray(stop - 9600, stop)),
      after: peakOf(out.subarray(stop + 0.05 * RATE)),
      steepestBefore: steepest(stop - 24_000, stop),
      steepestDuring: steepest(stop, stop + 0.05 * RATE),
      left,
    };
  },

  /** A note held for 2 s with the tuning moved at 1 s: cycles counted in the half second before and after. */
  async bent(cents: number): Promise<{ before: number; after: number }> {
    const out = await offline(
      2,
      'made',
      mixOf(),
      (mixer) => mixer.start({ part: 'piano right', midi: 60, drum: null, velocity: 100 }, 0.1, 2),
      [{ at: 0.9, act: (mixer) => mixer.setMix(mixOf([], { tuningCents: cents })) }],
    );
    return { before: frequency(out.subarray(0.3 * RATE, 0.8 * RATE)), after: frequency(out.subarray(1 * RATE, 1.5 * RATE)) };
  },

  /** A stroke of clave while muted, and the count-in's while muted. */
  async muted(): Promise<{ part: number; countIn: number }> {
    const render = (aside?: 'count-in') =>
      offline(1, 'made', mixOf(['clave']), (mixer) => mixer.start(drum('clave'), 0.2, 0.1, aside)).then((out) =>
        peakOf(out.subarray(0.15 * RATE)),
      );
    return { part: await render(), countIn: await render('count-in') };
  },

  /** Loudness of a key that is held and let go at 0.6 s: while it is held, and from 0.15 s after that on. */
  async letGo(): Promise<{ held: number; after: number }> {
    let key: { end(): void } | null = null;
    const out = await offline(
      1.2,
      'recorded',
      mixOf(),
      (mixer) => {
        key = mixer.start({ part: 'piano right', midi: 60, drum: null, velocity: 90 }, 0.1, 30, 'touch');
      },
      [{ at: 0.6, act: () => key?.end() }],
    );
    return { held: rmsOf(out.subarray(0.45 * RATE, 0.58 * RATE)), after: rmsOf(out.subarray(0.95 * RATE)) };
  },

  /** Far too many strokes at once, to see the ceiling hold. */
  async overload(): Promise<number> {
    const out = await offline(1.5, 'recorded', mixOf([], { ceiling: 1 }), (mixer) => {
      for (let voice = 0; voice < 60; voice += 1)
        mixer.start({ part: 'piano right', midi: 48 + voice / 2, drum: null, velocity: 127 }, 0.2, 1);
    });
    return peakOf(out);
  },

  play(): void {
    thePlayer().play({ performance: loop(), fromTick: 0, tempo: halfNotesPerMinute(100), countInBars: 0 });
  },
  prepare(): void {
    thePlayer();
  },
  stop: () => thePlayer().stop(),
  touch: () => thePlayer().sound([60, 67], 90),
  states: () => ({
    sound: thePlayer().soundState(),
    transport: thePlayer().transportState().kind,
    sounds: witnessed.length,
    heard: thePlayer().heard()?.tick ?? null,
  }),
  /** Every state of the sound since the page was opened. */
  history: () => soundHistory,
  /** How far ahead of now the last sound that was handed over lies, in seconds. */
  reach(): number {
    return (witnessed.at(-1)?.at ?? 0) - (clock?.currentTime ?? 0);
  },
};

export type Bench = typeof bench;

Object.assign(window, { bench });
if (location.hash === '#at-once') bench.play();
