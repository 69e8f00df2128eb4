import { seeded } from '../../src/practice/seeded';
import { normal } from './synthetic';

/*
 * Synthesised rooms for the clap detector. A clap is two to four bursts of noise within a few milliseconds, coloured by a hand's
 * resonance, then an exponential tail of the room (in the manner of the bursts-and-resonance model of B. H. Repp, "The sound of two
 * hands clapping", JASA 81, 1987, from memory). Levels: the loudest clap peaks near 0.5 of full scale.
 */

/** A second of the past is enough of a room. */
export interface Room {
  readonly rate: number;
  readonly seed: number;
  /** Seconds of reverberation (60 dB) and its level against the clap. */
  readonly reverbSeconds: number;
  readonly reverbLevel: number;
}

/** An empty recording. */
export const silence = (room: Room, seconds: number): Float32Array => new Float32Array(Math.round(seconds * room.rate));

/** Adds a clap that begins at frame `at`; level 1 is a loud one. */
export function addClap(sound: Float32Array, room: Room, at: number, level: number, random: () => number): void {
  const { rate } = room;
  const bursts = 2 + Math.floor(random() * 3);
  const resonance = 1100 + random() * 1300;
  let place = 0;
  for (let burst = 0; burst < bursts; burst += 1) {
    const strength = burst === 0 ? 0.75 + 0.25 * random() : 0.35 + 0.65 * random();
    const decay = (0.0018 + 0.0015 * random()) * rate;
    let [y1, y2] = [0, 0];
    const radius = 0.93;
    const turn = 2 * radius * Math.cos((2 * Math.PI * resonance) / rate);
    for (let n = 0; n < 8 * decay; n += 1) {
      const noise = normal(random) * Math.exp(-n / decay) * Math.min(1, n / (0.0002 * rate));
      const body = noise * 0.35 + turn * y1 - radius * radius * y2;
      y2 = y1;
      y1 = body;
      add(sound, at + place + n, 0.22 * level * strength * (0.6 * noise + 0.4 * body));
    }
    place += Math.round((0.0015 + 0.002 * random()) * rate);
  }
  const tail = room.reverbSeconds * rate;
  // Uniform noise of the same power: a room's tail is far below the clap, and this is quick.
  for (let n = Math.round(0.003 * rate); n < tail; n += 1)
    add(sound, at + n, 0.22 * level * room.reverbLevel * Math.sqrt(12) * (random() - 0.5) * Math.exp((-6.9 * n) / tail));
}

/** Adds the click of the band's pulse as a loudspeaker gives it: a tone that begins within half a millisecond and dies away. */
export function addClick(sound: Float32Array, room: Room, at: number, level: number, hertz: number): void {
  const { rate } = room;
  for (let n = 0; n < 0.08 * rate; n += 1) {
    const attack = Math.min(1, n / (0.0005 * rate));
    const tone =
      Math.sin((2 * Math.PI * hertz * n) / rate) + 0.3 * Math.sin((2 * Math.PI * 2.7 * hertz * n) / rate) * Math.exp(-n / (0.004 * rate));
    add(sound, at + n, level * attack * tone * Math.exp(-n / (0.018 * rate)));
  }
}

/** Adds white noise of a root mean square. */
export function addNoise(sound: Float32Array, rms: number, random: () => number): void {
  for (let n = 0; n < sound.length; n += 1) add(sound, n, rms * normal(random));
}

/** Adds something like speech: syllables of a buzzing voice with formants, and between them hissing sounds that swell in 15 to 30 ms. */
export function addSpeech(sound: Float32Array, room: Room, level: number, random: () => number): void {
  const { rate } = room;
  let at = 0;
  while (at < sound.length) {
    const length = (0.09 + 0.12 * random()) * rate;
    const pitch = 100 + 80 * random();
    for (let n = 0; n < length; n += 1) {
      const shape = Math.sin((Math.PI * n) / length) ** 2;
      let voice = 0;
      for (let harmonic = 1; harmonic <= 12; harmonic += 1) {
        const hertz = harmonic * pitch;
        const formant = 1 / (1 + ((hertz - 600) / 300) ** 2) + 0.4 / (1 + ((hertz - 1700) / 350) ** 2);
        voice += formant * Math.sin((2 * Math.PI * hertz * n) / rate);
      }
      add(sound, Math.round(at + n), 0.3 * level * shape * voice);
    }
    at += length + 0.02 * rate * random();
    if (random() < 0.5) {
      const hiss = (0.06 + 0.08 * random()) * rate;
      const swell = (0.015 + 0.015 * random()) * rate;
      let before = 0;
      for (let n = 0; n < hiss; n += 1) {
        const shape = Math.min(1, n / swell, (hiss - n) / (0.02 * rate));
        const noise = normal(random);
        add(sound, Math.round(at + n), 0.35 * level * shape * (noise - before));
        before = noise;
      }
      at += hiss;
    }
    at += 0.15 * rate * random();
  }
}

function add(sound: Float32Array, at: number, value: number): void {
  if (at >= 0 && at < sound.length) sound[at] = (sound[at] ?? 0) + value;
}

/** Root mean square of the ten milliseconds after a frame. */
export function rmsAfter(sound: Float32Array, room: Room, at: number): number {
  const length = Math.round(0.01 * room.rate);
  const piece = sound.subarray(at, at + length);
  return Math.sqrt(piece.reduce((sum, value) => sum + value * value, 0) / piece.length);
}

/** Random numbers of a room. */
export const randomOf = (room: Room): (() => number) => seeded(room.seed);
