/*
 * A loudspeaker and a microphone in a synthesised room: the clave as it is recorded and the pulse as it is made, through a small
 * loudspeaker and a room, under a piano, under claps. Delays and claps are known to the frame.
 */
import { readFileSync } from 'node:fs';
import { loadMp3Decoder } from '../../src/cli/decode-mp3';
import { drumTone, SYNTHESISED_RATE } from '../../src/performance/sounds/synthesised-set';
import { createClapOnsets } from '../../src/practice/clap-onsets';
import { createThinner } from '../../src/practice/thin';
import type { ClickSound, HeardSound } from '../../src/state/listening/ports';
import { inputMillis } from '../../src/vocabulary';
import { addClap, addNoise, type Room, randomOf, silence } from '../practice/rooms';
import { normal } from '../practice/synthetic';

/** What sounds and what is clapped, in seconds of the band. */
export interface Take {
  readonly seconds: number;
  readonly clicks: readonly { readonly name: string; readonly at: number }[];
  /** Moments as the player hears them: with the band, when they come out of the loudspeaker. */
  readonly claps: readonly number[];
}

const decode = await loadMp3Decoder();
const recorded = (file: string) => {
  const { frames, rate } = decode(readFileSync(`public/samples/${file}`));
  return { samples: Float32Array.from(frames), rate };
};
const PIANO = ['piano-60-108.mp3', 'piano-64-72.mp3', 'piano-72-108.mp3', 'piano-84-72.mp3'].map(recorded);
/** The clicks as the page sounds them. */
export const CLICKS: Readonly<Record<string, ClickSound>> = {
  clave: { name: 'clave', ...recorded('clave.mp3') },
  'pulse high': { name: 'pulse high', samples: drumTone('pulse high'), rate: SYNTHESISED_RATE },
  'pulse low': { name: 'pulse low', samples: drumTone('pulse low'), rate: SYNTHESISED_RATE },
};

/** Steps of son clave, the 3-side first; the published pattern (e.g. C. Washburne 1998), from memory. */
export const CLAVE_STEPS = [0, 3, 6, 10, 12] as const;

/** A count-in of a bar and `cycles` clave cycles; `stepSeconds` an eighth. Claps on the steps given, spread as a player spreads them. */
export function takeOf(cycles: number, stepSeconds: number, steps: readonly number[], random: () => number): Take {
  const start = 1;
  const at = (step: number): number => start + step * stepSeconds;
  const clicks = [8, 12].map((step, index) => ({ name: index === 0 ? 'pulse high' : 'pulse low', at: at(step - 8) }));
  const claveAt = (step: number) => ({ name: 'clave', at: at(step) });
  clicks.push(...CLAVE_STEPS.filter((step) => step >= 8).map((step) => claveAt(step - 8)));
  const claps: number[] = [];
  for (let cycle = 0; cycle < cycles; cycle += 1) {
    const from = 8 + 16 * cycle;
    clicks.push(...CLAVE_STEPS.map((step) => claveAt(from + step)));
    claps.push(...steps.map((step) => at(from + step) + 0.012 * normal(random)));
  }
  return { seconds: at(8 + 16 * cycles) + 1, clicks: clicks.sort((a, b) => a.at - b.at), claps };
}

/** How loud the loudspeaker is at the microphone against a loud clap (peak 0.5), its piano, and the noise of the room. */
export interface Levels {
  readonly band: number;
  readonly piano: number;
  readonly noise: number;
}

/** What the microphone hears of a take when the way through loudspeaker and microphone takes `delay` seconds. */
export function hearTake(room: Room, take: Take, delay: number, levels: Levels) {
  const { rate } = room;
  const random = randomOf(room);
  const band = silence(room, take.seconds + 1);
  const add = ({ samples, rate: own }: { samples: Float32Array; rate: number }, at: number, level: number, seconds = 1): void => {
    const first = Math.round(at * rate);
    for (let frame = 0; frame < seconds * rate && first + frame < band.length; frame += 1) {
      const place = (frame * own) / rate;
      const index = Math.floor(place);
      if (index >= samples.length) break;
      const sample = (samples[index] ?? 0) + ((samples[index + 1] ?? 0) - (samples[index] ?? 0)) * (place - index);
      band[first + frame] = (band[first + frame] ?? 0) + level * sample;
    }
  };
  for (const { name, at } of take.clicks) {
    const click = CLICKS[name];
    if (click) add(click, at, levels.band);
  }
  // A piano that plays on every other eighth, as a montuno does, together with the clave and beside it.
  for (let at = 2; at < take.seconds - 1; at += 0.3) {
    const note = PIANO[Math.floor(random() * PIANO.length)];
    if (note) add(note, at, levels.piano, 0.28);
  }
  const sound = throughRoom(band, room, delay, random);
  for (const at of take.claps) addClap(sound, room, Math.round((at + delay) * rate), 0.4 + 0.6 * random(), random);
  addNoise(sound, levels.noise, random);
  return sound;
}

/** Frames that are mixed at a time. */
const STRETCH = 2048;

/** A small loudspeaker (nothing below 200 Hz), the direct sound, seven early reflections and a tail. */
function throughRoom(band: Float32Array, room: Room, delay: number, random: () => number): Float32Array {
  const { rate } = room;
  const out = new Float32Array(band.length);
  const thin = new Float32Array(band.length);
  const keep = Math.exp((-2 * Math.PI * 200) / rate);
  let [before, value] = [0, 0];
  for (let frame = 0; frame < band.length; frame += 1) {
    value = keep * (value + (band[frame] ?? 0) - before);
    before = band[frame] ?? 0;
    thin[frame] = value;
  }
  const paths = [{ late: delay, level: 1 }];
  // Walls, ceiling and table, then a dense tail whose energy lies 6 dB below the direct sound: a loudspeaker within an arm's length or two.
  for (let wall = 0; wall < 7; wall += 1)
    paths.push({ late: delay + 0.001 + 0.03 * random(), level: (random() < 0.5 ? -1 : 1) * (0.15 + 0.35 * random()) });
  const tail = Array.from({ length: 300 }, () => ({ late: 0.005 + room.reverbSeconds * random(), level: random() < 0.5 ? -1 : 1 })).map(
    ({ late, level }) => ({ late, level: level * Math.exp((-6.9 * late) / room.reverbSeconds) }),
  );
  const energy = tail.reduce((sum, { level }) => sum + level * level, 0);
  for (const { late, level } of tail) paths.push({ late: delay + late, level: level * Math.sqrt(0.25 / energy) });
  const shifts = paths.map(({ late, level }) => ({ shift: Math.round(late * rate), level }));
  // A stretch at a time: all paths of it are added while it is near at hand, which is quicker.
  for (let from = 0; from < out.length; from += STRETCH)
    for (const { shift, level } of shifts)
      for (let frame = Math.max(from, shift); frame < Math.min(from + STRETCH, out.length); frame += 1)
        out[frame] = (out[frame] as number) + level * (thin[frame - shift] as number);
  return out;
}

/** A recording in pieces of about a tenth of a second, as the worklet hands it over; its first frame is heard at `zeroMs` of the input clock. */
export function piecesOf(sound: Float32Array, rate: number, zeroMs: number): HeardSound[] {
  const thinner = createThinner(rate);
  const frames = 38 * 128;
  return Array.from({ length: Math.floor(sound.length / frames) }, (_, index) => {
    const from = index * frames;
    const kept = new Float32Array(Math.ceil(frames / thinner.every) + 1);
    const many = thinner.push(sound.subarray(from, from + frames), kept, 0);
    const first = Math.ceil(from / thinner.every) * thinner.every;
    return { samples: kept.subarray(0, many), rate, at: inputMillis(zeroMs + (1000 * first) / rate) };
  });
}

/** Frames of the claps that the detector finds in a recording. */
export function clapsIn(sound: Float32Array, rate: number): number[] {
  const detector = createClapOnsets(rate);
  const found: number[] = [];
  for (let from = 0; from + 128 <= sound.length; from += 128) {
    const many = detector.push(sound.subarray(from, from + 128), from);
    found.push(...detector.frames.subarray(0, many));
  }
  return found;
}
