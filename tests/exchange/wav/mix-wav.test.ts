import { describe, expect, test } from 'vitest';
import { mixWav, WAV_PEAK } from '../../../src/exchange/wav/mix-wav';
import { madeSounds, type SoundSet } from '../../../src/exchange/wav/pcm';
import type { WavOptions } from '../../../src/exchange/wav/wav-plan';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';
import { readChart } from '../../../src/music/chart/read';
import { arrange, type Score } from '../../../src/music/score';
import { perform } from '../../../src/performance/perform';
import { PARTS } from '../../../src/performance/performance';
import { FIRST_LEVELS } from '../../../src/performance/sounds/first-levels';
import { type HalfNotesPerMinute, halfNotesPerMinute } from '../../../src/vocabulary';
import { events, performanceOf } from '../../performance/hand-made';
import { firstOnsets, onsetsOf, readWav, whole } from './read-wav';

const ALL = Object.fromEntries(PARTS.map((part) => [part, 0.5])) as WavOptions['levels'];
const plain = (tempo: HalfNotesPerMinute, more: Partial<WavOptions> = {}): WavOptions => ({
  rate: 44_100,
  tempo,
  levels: ALL,
  countInBars: 0,
  passes: 1,
  end: 'loop',
  ...more,
});

/** A bank in which everything is a single frame, so that an onset can be read to the frame. */
const CLICK = { frames: Float32Array.of(0.2), rate: 44_100 };
const CLICKS: SoundSet = {
  piano: Array.from({ length: 128 }, (_, midi) => ({ buffer: CLICK, midi, drum: null, velocity: 100 })),
  bass: Array.from({ length: 128 }, (_, midi) => ({ buffer: CLICK, midi, drum: null, velocity: 100 })),
  drums: [{ buffer: CLICK, midi: null, drum: 'clave', velocity: 100 }],
};

function scoreOf(text: string, options = {}): Score {
  const read = readChart(text);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return arrange(read.value, options);
}
const played = (score: Score) => perform(score, { sounding: { right: true, left: true }, pulse: 'halves', ending: false });

describe('a WAV file', () => {
  test.each(DEMO_BOOK.map(({ id, text }) => [id, text] as const))(
    'of %s: the first 20 onsets lie within a frame of the score',
    (_, text) => {
      const score = scoreOf(text, { level: 2 });
      // Every stroke of the score that is heard once it goes round; a half note lasts 60 / tempo seconds and has 960 ticks.
      const strokes = [score.parts.rightHand, score.parts.leftHand, score.parts.bass].flat().filter(({ firstPassOnly }) => !firstPassOnly);
      const ticks = new Set([...strokes, ...score.parts.clave].map(({ tick }) => tick));
      for (const rate of [44_100, 48_000] as const) {
        const expected = [...ticks].sort((a, b) => a - b).map((tick) => (tick / 960) * (60 / score.tempo) * rate);
        const levels = { ...ALL, percussion: 0, pulse: 0 };
        const sounds = rate === 44_100 ? CLICKS : withRate(CLICKS, rate);
        const found = firstOnsets(mixWav(played(score), plain(score.tempo, { rate, levels }), sounds).chunks, 20);
        expect(found).toHaveLength(20);
        for (const [index, frame] of found.entries()) expect(Math.abs(frame - (expected[index] ?? -9))).toBeLessThanOrEqual(1);
      }
    },
  );

  test('is as long as the loop, to the frame, and says so in its head', () => {
    // 2 bars at 92 half notes a minute: 4 half notes of 60/92 s, 2.60869… s, 115043.5 frames at 44.1 kHz and 125217.4 at 48 kHz.
    const performance = performanceOf(2, events({ tick: 0 }));
    const tempo = halfNotesPerMinute(92);
    for (const [rate, frames] of [
      [44_100, 115_043.478],
      [48_000, 125_217.391],
    ] as const)
      for (const passes of [1, 3]) {
        const stream = mixWav(performance, plain(tempo, { rate, passes }), CLICKS);
        const bytes = whole(stream.chunks);
        const wav = readWav(bytes);
        expect([wav.rate, wav.channels, wav.bits]).toEqual([rate, 2, 16]);
        expect(wav.left.length).toBe(Math.round(frames * passes));
        expect(Buffer.compare(Buffer.from(wav.right.buffer), Buffer.from(wav.left.buffer))).toBe(0);
        expect(bytes.length).toBe(stream.bytes);
      }
  });

  test('has its count-in before the music and its tail after it', () => {
    const performance = performanceOf(2, events({ tick: 0, soundingTicks: 1920 * 2 }));
    const tempo = halfNotesPerMinute(60);
    const { left } = readWav(whole(mixWav(performance, plain(tempo, { countInBars: 2, end: 1.5 }), CLICKS).chunks));
    expect(left.length).toBe(44_100 * (4 + 4 + 1.5));
    // 2-3 son and a beat on every half note in the two bars before (60 half notes a minute: a step is a quarter second); then the note.
    const steps = [0, 2, 4, 8, 11, 12, 14, 16];
    expect(onsetsOf(left)).toEqual(steps.map((step) => step * 11_025));
  });

  test('that loops begins with what its last notes leave ringing, and a note for the first pass alone is not in it', () => {
    const ring = { frames: new Float32Array(44_100).fill(0.1), rate: 44_100 };
    const sounds: SoundSet = { ...CLICKS, piano: [{ buffer: ring, midi: 60, drum: null, velocity: 90 }] };
    const made = events({ tick: 1680, soundingTicks: 480 }, { tick: 0, firstPassOnly: true });
    const { left } = readWav(whole(mixWav(performanceOf(1, made), plain(halfNotesPerMinute(60)), sounds).chunks));
    const last = left.length - 1;
    expect(left.length).toBe(2 * 44_100);
    expect(left[last]).toBeGreaterThan(0);
    // The same height on both sides of the seam; then it is held for a step more and let go.
    expect(left[0]).toBe(left[last]);
    expect(left[11_000]).toBe(left[last]);
    expect(left[11_025 + 4000]).toBe(0);
    // With a tail the first pass is heard as the first.
    const tail = readWav(whole(mixWav(performanceOf(1, made), plain(halfNotesPerMinute(60), { end: 1 }), sounds).chunks)).left;
    expect(tail[5000]).toBeGreaterThan(0);
  });

  test('cut where notes sound fades instead of breaking off', () => {
    const ring = { frames: new Float32Array(88_200).fill(0.1), rate: 44_100 };
    const sounds: SoundSet = { ...CLICKS, piano: [{ buffer: ring, midi: 60, drum: null, velocity: 90 }] };
    const made = performanceOf(1, events({ tick: 960, soundingTicks: 1920 }));
    const { left } = readWav(whole(mixWav(made, plain(halfNotesPerMinute(60), { countInBars: 1 }), sounds).chunks));
    const steepest = left.subarray(-600).reduce((high, value, at, all) => Math.max(high, Math.abs(value - (all[at - 1] ?? value))), 0);
    expect(left.at(-1)).toBe(0);
    expect(steepest).toBeLessThan(20);
  });

  test('never passes 1 dB under full scale, however loud the parts, and with the mix that is heard the ceiling bends nothing', () => {
    const loud = Object.fromEntries(PARTS.map((part) => [part, 3])) as WavOptions['levels'];
    const sounds = madeSounds();
    const kept = new Map();
    for (const [index, { text }] of DEMO_BOOK.entries()) {
      const performance = played(scoreOf(text, { level: 4 }));
      for (const [levels, most] of [
        [loud, WAV_PEAK],
        [{ ...FIRST_LEVELS, pulse: 0 }, (0.75 / 0.97) * WAV_PEAK],
      ] as const) {
        if (levels === loud && index > 0) continue;
        const { left } = readWav(whole(mixWav(performance, plain(performance.tempo, { levels }), sounds, kept).chunks));
        const peak = left.reduce((high, value) => Math.max(high, Math.abs(value)), 0) / 32_768;
        expect(peak).toBeLessThanOrEqual(most);
        expect(peak).toBeGreaterThan(0.1);
      }
    }
  });

  test('leaves out a part at level 0 and sounds the others as they were', () => {
    const made = performanceOf(1, events({ tick: 0 }, { tick: 960, part: 'bass', midi: 40 }));
    const only = (levels: WavOptions['levels']) =>
      onsetsOf(readWav(whole(mixWav(made, plain(halfNotesPerMinute(60), { levels }), CLICKS).chunks)).left);
    expect(only(ALL)).toEqual([0, 44_100]);
    expect(only({ ...ALL, 'piano right': 0 })).toEqual([44_100]);
    expect(only({ ...ALL, bass: 0 })).toEqual([0]);
  });

  test('with dither differs by two steps at most, and the same twice', () => {
    const made = performanceOf(1, events({ tick: 0 }));
    const file = (dither: boolean) => readWav(whole(mixWav(made, plain(halfNotesPerMinute(60), { dither }), madeSounds()).chunks)).left;
    const clean = file(false);
    const noisy = file(true);
    expect(file(true)).toEqual(noisy);
    expect(Math.max(...noisy.map((value, at) => Math.abs(value - (clean[at] ?? 0))))).toBeLessThanOrEqual(2);
    expect(noisy).not.toEqual(clean);
  });
});

function withRate(sounds: SoundSet, rate: number): SoundSet {
  const at = (bank: SoundSet['piano']) => bank.map((sound) => ({ ...sound, buffer: { frames: CLICK.frames, rate } }));
  return { piano: at(sounds.piano), bass: at(sounds.bass), drums: at(sounds.drums) };
}
