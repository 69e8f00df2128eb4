/** A synthesised room for the fake microphone: claps, clicks that bleed in, a hum of voices, noise; written as a WAV file. */
import { writeFileSync } from 'node:fs';
import { BROWSER_ARGUMENTS, findBrowser } from '../scripts/find-browser';
import { normal } from './rounds';

/** What a test uses to let the page hear a sound file, over and over, as its microphone. */
export const microphoneFrom = (file: string) => ({
  permissions: ['microphone'],
  launchOptions: {
    executablePath: findBrowser(),
    args: [
      ...BROWSER_ARGUMENTS,
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-audio-capture=${file}`,
    ],
  },
});

/** What happens in the room, in seconds. */
export interface Room {
  readonly seconds: number;
  readonly claps: readonly number[];
  /** Clicks of the band out of the loudspeaker. */
  readonly clicks: readonly number[];
  /** Noise floor, as a share of full scale. */
  readonly noise: number;
  /** Loudness of something like a voice: tones of a falling and rising pitch, in syllables. */
  readonly voice: number;
}

const RATE = 48_000;

/** Writes the room as 16-bit mono PCM (RIFF/WAVE, as of the Microsoft and IBM specification of 1991). */
export function writeRoom(path: string, room: Room, seed = 5) {
  const frames = Math.round(room.seconds * RATE);
  const sound = new Float64Array(frames);
  const next = normal(seed);
  for (let frame = 0; frame < frames; frame += 1) {
    const seconds = frame / RATE;
    const syllable = Math.max(0, Math.sin(2 * Math.PI * 3.1 * seconds));
    const pitch = 140 + 30 * Math.sin(2 * Math.PI * 0.7 * seconds);
    const voice = Math.sin(2 * Math.PI * pitch * seconds) + 0.5 * Math.sin(2 * Math.PI * 7 * pitch * seconds) * syllable;
    sound[frame] = room.noise * next() + room.voice * syllable * voice;
  }
  const add = (at: number, seconds: number, value: (seconds: number) => number) => {
    const from = Math.round(at * RATE);
    for (let frame = 0; frame < seconds * RATE && from + frame < frames; frame += 1)
      sound[from + frame] = (sound[from + frame] ?? 0) + value(frame / RATE);
  };
  // A clap: a burst of noise that has gone in some ten milliseconds, and a small room after it.
  for (const at of room.claps) add(at, 0.09, (t) => next() * (0.34 * Math.exp(-t / 0.006) + 0.015 * Math.exp(-t / 0.03)));
  // A click: a short tone, as clave and metronome clicks are.
  for (const at of room.clicks) add(at, 0.05, (t) => 0.12 * Math.sin(2 * Math.PI * 2500 * t) * Math.exp(-t / 0.01));
  writeSound(path, sound, RATE);
}

/** Writes samples (−1 to 1) as 16-bit mono PCM. */
export function writeSound(path: string, sound: ArrayLike<number>, rate: number) {
  const frames = sound.length;
  const bytes = Buffer.alloc(44 + 2 * frames);
  bytes.write('RIFF', 0, 'latin1');
  bytes.writeUInt32LE(36 + 2 * frames, 4);
  bytes.write('WAVEfmt ', 8, 'latin1');
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(rate, 24);
  bytes.writeUInt32LE(2 * rate, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36, 'latin1');
  bytes.writeUInt32LE(2 * frames, 40);
  for (let frame = 0; frame < frames; frame += 1)
    bytes.writeInt16LE(Math.round(Math.max(-1, Math.min(1, sound[frame] ?? 0)) * 32_767), 44 + 2 * frame);
  writeFileSync(path, bytes);
}
