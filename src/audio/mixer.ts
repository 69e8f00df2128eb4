import { Context } from 'tone/build/esm/core/context/Context.js';
import { Gain } from 'tone/build/esm/core/context/Gain.js';
import { setContext } from 'tone/build/esm/core/context/GlobalContext.js';
import { WaveShaper } from 'tone/build/esm/signal/WaveShaper.js';
import { ToneBufferSource } from 'tone/build/esm/source/buffer/ToneBufferSource.js';
import type { PartName } from '../performance/performance';
import { PARTS } from '../performance/performance';
import { COUNT_IN_GAIN, PART_GAIN, RELEASE_SECONDS, SHORTEST_NOTE_SECONDS } from '../performance/sounds/balance';
import { CEILING_INPUT, ceilingCurve } from '../performance/sounds/ceiling';
import type { InstrumentName } from '../performance/sounds/sample-set';
import type { BankSound } from '../performance/sounds/sound-bank';
import { instrumentOf, pickSound } from '../performance/sounds/sound-bank';
import type { ClickSound } from '../state/listening/ports';
import type { Mix } from '../state/ports';
import { supplyHold } from './hold-value';

/*
 * The sounding side: voices → one gain per part → sum → ceiling → overall loudness → stop gate → the device.
 * Built of single Tone.js nodes, imported file by file: Tone's index would start a context and a blob worker of its
 * own. Tone's clock is switched off and driven by `tick`; every start and stop carries an absolute time.
 */

/** What the mixer needs to know of a sound. */
export interface MixerSound {
  readonly part: PartName;
  readonly midi: number | null;
  readonly drum: string | null;
  readonly velocity: number;
}

/** The mixer with everything that sounds behind it. */
export interface Mixer {
  /** Sounds from `at` (seconds of the audio clock) for `seconds`; drums ring out. An `aside` sounds whatever is muted. Null when there is nothing to sound. */
  start(sound: MixerSound, at: number, seconds: number, aside?: Aside): StartedSound | null;
  /** Fades everything out within 20 ms and forgets what is on its way. New sounds may start 50 ms later. */
  silence(): void;
  setMix(mix: Mix): void;
  /** Takes these sounds for an instrument, from the next voice on. */
  takeBank(instrument: InstrumentName, bank: readonly BankSound<AudioBuffer>[]): void;
  /** The samples of an unpitched sound as it is played now; null when there is none. */
  clickSound(drum: string): ClickSound | null;
  /** Lets finished voices go; call it every now and then. */
  tick(): void;
  /** Voices that sound or are on their way. */
  voices(): number;
}

/** A sound that was started; `end` damps it now, if it has not ended. */
export interface StartedSound {
  end(): void;
}

/** What sounds beside the parts: the count-in, and a stroke that is touched on the screen. */
export type Aside = 'count-in' | 'touch';
type Channel = PartName | Aside;
const ASIDES: readonly Aside[] = ['count-in', 'touch'];

const CHANNEL_GAIN: Readonly<Record<Channel, number>> = { ...PART_GAIN, 'count-in': COUNT_IN_GAIN, touch: 1.1 };
const STOP_RAMP_SECONDS = 0.015;
const MIX_RAMP_SECONDS = 0.02;

interface Voice {
  readonly source: ToneBufferSource;
  /** Playback rate at A = 440. */
  readonly rate: number;
  readonly at: number;
}

/** A mixer on a context of the browser's, live or offline. One per context. */
export function createMixer(native: BaseAudioContext): Mixer {
  supplyHold();
  // Tone's own declarations name a wrapper library's classes; it takes the browser's as well.
  const context = new Context({ context: native as never, clockSource: 'offline', lookAhead: 0 });
  setContext(context);
  const gate = new Gain({ context, gain: 1 });
  const loudness = new Gain({ context, gain: 0.7 });
  const ceiling = new WaveShaper({ context });
  // Handed to the constructor, the curve would wait for the context to run, and the first sounds would miss it.
  ceiling.curve = ceilingCurve();
  const sum = new Gain({ context, gain: 1 / CEILING_INPUT });
  sum.chain(ceiling, loudness, gate);
  gate.connect(native.destination as never);
  const channels = new Map<Channel, Gain>(
    [...PARTS, ...ASIDES].map((channel) => [channel, new Gain({ context, gain: CHANNEL_GAIN[channel] }).connect(sum)]),
  );
  const banks = new Map<InstrumentName, readonly BankSound<AudioBuffer>[]>();
  const voices = new Set<Voice>();
  let bend = 1;

  return {
    start(sound, at, seconds, aside) {
      const instrument = instrumentOf(sound);
      const picked = pickSound(banks.get(instrument) ?? [], sound);
      const channel = channels.get(aside ?? sound.part);
      if (picked === null || channel === undefined) return null;
      // On a whole frame, so that the sound is the recording itself and not an interpolation between its frames.
      const start = Math.ceil(Math.max(at, native.currentTime) * native.sampleRate - 1e-3) / native.sampleRate;
      const source = new ToneBufferSource({
        context,
        url: picked.buffer,
        playbackRate: picked.rate * bend,
        fadeOut: RELEASE_SECONDS[instrument],
      });
      const voice: Voice = { source, rate: picked.rate, at: start };
      source.onended = () => voices.delete(voice);
      source.connect(channel);
      source.start(start, 0, undefined, picked.gain);
      if (instrument !== 'drums') source.stop(start + Math.max(SHORTEST_NOTE_SECONDS, seconds));
      voices.add(voice);
      return {
        end: () => {
          if (voices.has(voice)) source.stop(Math.max(native.currentTime, start + SHORTEST_NOTE_SECONDS));
        },
      };
    },
    silence() {
      const now = native.currentTime;
      const over = now + STOP_RAMP_SECONDS + 0.005;
      gate.gain.cancelScheduledValues(now);
      gate.gain.setValueAtTime(1, now);
      gate.gain.linearRampToValueAtTime(0, now + STOP_RAMP_SECONDS);
      gate.gain.setValueAtTime(1, now + 0.045);
      for (const voice of voices) {
        // A stop before a queued start would not hold; a voice that has not begun can be taken away without a click.
        if (voice.at > now) {
          voices.delete(voice);
          voice.source.dispose();
        } else {
          voice.source.fadeOut = 0;
          voice.source.stop(over);
        }
      }
    },
    setMix(mix) {
      for (const part of PARTS) {
        const { level, muted } = mix.parts[part];
        channels.get(part)?.gain.linearRampTo(muted ? 0 : level * CHANNEL_GAIN[part], MIX_RAMP_SECONDS);
      }
      loudness.gain.linearRampTo(mix.ceiling, MIX_RAMP_SECONDS);
      bend = 2 ** (mix.tuningCents / 1200);
      for (const { source, rate } of voices) source.playbackRate.setValueAtTime(rate * bend, native.currentTime);
    },
    takeBank(instrument, bank) {
      banks.set(instrument, bank);
    },
    clickSound(drum) {
      const buffer = pickSound(banks.get('drums') ?? [], { midi: null, drum, velocity: 100 })?.buffer;
      return buffer ? { name: drum, samples: buffer.getChannelData(0), rate: buffer.sampleRate * bend } : null;
    },
    tick() {
      context.emit('tick');
    },
    voices: () => voices.size,
  };
}
