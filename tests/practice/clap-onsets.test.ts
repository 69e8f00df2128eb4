import { describe, expect, test } from 'vitest';
import { createClapOnsets } from '../../src/practice/clap-onsets';
import { medianOf } from '../../src/practice/statistics';
import { addClap, addClick, addNoise, addSpeech, type Room, randomOf, rmsAfter, silence } from './rooms';

/** Onsets of a recording, fed in blocks of 128 as a worklet is; frames. */
function onsets(sound: Float32Array, rate: number, from = 1000): number[] {
  const detector = createClapOnsets(rate);
  const found: number[] = [];
  for (let at = 0; at + 128 <= sound.length; at += 128) {
    const count = detector.push(sound.subarray(at, at + 128), from + at);
    for (let index = 0; index < count; index += 1) found.push((detector.frames[index] ?? 0) - from);
  }
  return found;
}

/** Claps found within a window, onsets and claps in all, and the distances in milliseconds. */
function score(found: readonly number[], truth: readonly number[], rate: number, windowMs: number) {
  const errors: number[] = [];
  const free = new Set(found);
  for (const at of truth) {
    const nearest = [...free].sort((a, b) => Math.abs(a - at) - Math.abs(b - at))[0];
    if (nearest === undefined || (1000 * Math.abs(nearest - at)) / rate > windowMs) continue;
    free.delete(nearest);
    errors.push((1000 * Math.abs(nearest - at)) / rate);
  }
  return { hits: errors.length, of: found.length + truth.length, errors };
}

/** F of several recordings together. */
const together = (parts: readonly { readonly hits: number; readonly of: number }[]): number =>
  (2 * parts.reduce((sum, { hits }) => sum + hits, 0)) / parts.reduce((sum, { of }) => sum + of, 0);

const ROOMS = {
  clean: () => undefined,
  'click bleeding in': (sound, room) => {
    for (let beat = 0; beat * 0.6 < sound.length / room.rate; beat += 1)
      addClick(sound, room, Math.round(beat * 0.6 * room.rate), 0.12, beat % 2 === 0 ? 1800 : 1200);
  },
  'with speech': (sound, room) => addSpeech(sound, room, 0.06, randomOf({ ...room, seed: room.seed + 1 })),
  'noise 10 dB below the claps': (sound, room, clapRms) =>
    addNoise(sound, clapRms * 10 ** (-10 / 20), randomOf({ ...room, seed: room.seed + 2 })),
} satisfies Record<string, (sound: Float32Array, room: Room, clapRms: number) => void>;

/** Claps of a montuno rhythm, loud and soft, in three rooms; returns the recording and the true frames. */
function recording(kind: keyof typeof ROOMS, rate: number, seed: number, reverbSeconds: number) {
  const room: Room = { rate, seed, reverbSeconds, reverbLevel: 0.08 };
  const random = randomOf(room);
  const sound = silence(room, 20);
  const truth: number[] = [];
  const pattern = [0, 2, 3, 5, 7, 9, 11, 13, 15];
  for (let step = 4; step * 0.16 < 19.5; step += 1) {
    if (!pattern.includes(step % 16)) continue;
    const at = Math.round((step * 0.16 + 0.02 * (random() - 0.5)) * rate);
    truth.push(at);
    addClap(sound, room, at, 0.45 + 0.55 * random(), random);
  }
  const clapRms = medianOf(truth.map((at) => rmsAfter(sound, room, at))) ?? 0;
  ROOMS[kind](sound, room, clapRms);
  return { sound, truth };
}

describe('claps', () => {
  test.each(Object.keys(ROOMS) as (keyof typeof ROOMS)[])('%s: F at least 0.95 within 25 ms, median error at most 3 ms', (kind) => {
    for (const rate of [44_100, 48_000]) {
      const rooms = (rate === 48_000 ? [0.15, 0.35, 0.6] : [0.2, 0.5]).map((reverb, index) =>
        recording(kind, rate, 10 * index + rate, reverb),
      );
      const heard = rooms.map(({ sound, truth }) => ({ found: onsets(sound, rate), truth }));
      const at = (windowMs: number) => heard.map(({ found, truth }) => score(found, truth, rate, windowMs));
      const [f50, f25, f10] = [at(50), at(25), at(10)].map(together);
      const lowest = Math.min(...at(25).map((one) => together([one])));
      const medianMs = medianOf(at(25).flatMap(({ errors }) => errors)) ?? Number.POSITIVE_INFINITY;
      console.log(
        `claps, ${kind}, ${rate} Hz, ${rooms.length} rooms: F ${f50?.toFixed(3)} at 50 ms, ${f25?.toFixed(3)} at 25 ms (lowest room ${lowest.toFixed(3)}), ${f10?.toFixed(3)} at 10 ms; median error ${medianMs.toFixed(2)} ms`,
      );
      expect(f25).toBeGreaterThanOrEqual(0.95);
      expect(medianMs).toBeLessThanOrEqual(3);
    }
  });

  test('two claps 125 ms apart are both found, also when the second is softer', () => {
    const room: Room = { rate: 48_000, seed: 5, reverbSeconds: 0.4, reverbLevel: 0.08 };
    const random = randomOf(room);
    const sound = silence(room, 30);
    const truth: number[] = [];
    for (let pair = 1; pair < 28; pair += 1)
      for (const [late, level] of [
        [0, 1],
        [0.125, 0.5],
      ] as const) {
        const at = Math.round((pair + late) * room.rate);
        truth.push(at);
        addClap(sound, room, at, level, random);
      }
    addNoise(sound, 0.001, random);
    expect(together([score(onsets(sound, room.rate), truth, room.rate, 25)])).toBe(1);
  });

  test.each([0.05, 0.2, 0.5])('a minute of clicks alone at level %d is no clap', (level) => {
    for (const rate of level === 0.2 ? [44_100] : [48_000]) {
      const room: Room = { rate, seed: 6, reverbSeconds: 0.3, reverbLevel: 0.05 };
      const sound = silence(room, 60);
      addNoise(sound, 0.0005, randomOf(room));
      for (let beat = 0; beat < 140; beat += 1)
        addClick(sound, room, Math.round((0.3 + beat * 0.42) * rate), level, [1000, 1500, 2000, 2500][beat % 4] ?? 1000);
      expect(onsets(sound, rate)).toEqual([]);
    }
  });

  test('silence, noise and speech alone are no claps', () => {
    const room: Room = { rate: 48_000, seed: 7, reverbSeconds: 0.3, reverbLevel: 0.05 };
    const quiet = silence(room, 10);
    expect(onsets(quiet, room.rate)).toEqual([]);
    addNoise(quiet, 0.05, randomOf(room));
    expect(onsets(quiet, room.rate)).toEqual([]);
    const talk = silence(room, 20);
    addSpeech(talk, room, 0.06, randomOf(room));
    const taken = onsets(talk, room.rate).length;
    console.log(`claps: ${taken} in 20 s of something like speech, without a clap`);
    expect(taken).toBeLessThanOrEqual(1);
  });

  test('the same onsets for blocks of any size; a gap starts it again', () => {
    const { sound } = recording('clean', 48_000, 3, 0.3);
    const detector = createClapOnsets(48_000);
    const whole: number[] = [];
    for (let at = 0; at < sound.length; at += 4096) {
      const count = detector.push(sound.subarray(at, at + 4096), at);
      for (let index = 0; index < count; index += 1) whole.push(detector.frames[index] ?? 0);
    }
    expect(onsets(sound, 48_000, 0)).toEqual(whole.filter((at) => at < sound.length - 256));
    expect(detector.ready).toBe(true);
    detector.push(new Float32Array(128), 10_000_000);
    expect(detector.ready).toBe(false);
  });

  test('a block of 128 takes a small part of its 2.7 ms', () => {
    const { sound } = recording('clean', 48_000, 4, 0.3);
    const from = performance.now();
    onsets(sound, 48_000);
    const perBlock = (performance.now() - from) / (sound.length / 128);
    console.log(`claps: ${(1000 * perBlock).toFixed(1)} µs a block of 128`);
    expect(perBlock).toBeLessThan(1);
  });
});
