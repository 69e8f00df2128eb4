import { existsSync, readFileSync, statSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CEILING_INPUT, CEILING_KNEE, CEILING_LIMIT, ceilingCurve, underCeiling } from '../../../src/performance/sounds/ceiling';
import { BASS_SAMPLES, DRUM_SAMPLES, PIANO_SAMPLES } from '../../../src/performance/sounds/sample-set';
import { instrumentOf, pickSound } from '../../../src/performance/sounds/sound-bank';
import { bassTone, DRUM_NAMES, drumTone, pianoTone, SYNTHESISED_RATE } from '../../../src/performance/sounds/synthesised-set';

const FILES = [...PIANO_SAMPLES, ...BASS_SAMPLES, ...DRUM_SAMPLES].map(({ file }) => file);

describe('the recordings', () => {
  test('are all there, each once, with their notice, in at most 1.5 MB', () => {
    expect(new Set(FILES).size).toBe(FILES.length);
    expect(FILES.filter((file) => !existsSync(`public/samples/${file}`))).toEqual([]);
    expect(FILES.reduce((sum, file) => sum + statSync(`public/samples/${file}`).size, 0)).toBeLessThan(1.5 * 1024 * 1024);
    const notice = readFileSync('public/samples/NOTICE', 'utf8');
    expect(notice).toContain('Permission is hereby granted, free of charge');
    expect(notice).toContain('Frank Wen');
  });

  test('cover the piano and the tumbao so that no note is bent by more than two semitones', () => {
    const farthest = (pitches: readonly number[], from: number, to: number) =>
      Math.max(...Array.from({ length: to - from + 1 }, (_, index) => Math.min(...pitches.map((pitch) => Math.abs(pitch - from - index)))));
    expect(
      farthest(
        PIANO_SAMPLES.map(({ midi }) => midi),
        34,
        98,
      ),
    ).toBe(2);
    // The tumbao's range is E1 to G3, MIDI 28 to 55.
    expect(
      farthest(
        BASS_SAMPLES.map(({ midi }) => midi),
        28,
        55,
      ),
    ).toBe(1);
  });

  test('take their percussion from the General MIDI key map', () => {
    // General MIDI 1 percussion key map, from memory: 75 claves, 37 side stick, 56 cowbell, 63 open high conga, 64 low conga, 70 maracas.
    const key = (name: string) => DRUM_SAMPLES.find(({ drum }) => drum === name)?.generalMidi;
    expect(['clave', 'shell', 'bell', 'conga open', 'conga low', 'maracas'].map(key)).toEqual([75, 37, 56, 63, 64, 70]);
  });
});

describe('a bank', () => {
  const bank = [
    { buffer: 'soft 60', midi: 60, drum: null, velocity: 72 },
    { buffer: 'soft 64', midi: 64, drum: null, velocity: 72 },
    { buffer: 'strong 60', midi: 60, drum: null, velocity: 108 },
  ];
  const note = (midi: number, velocity: number) => pickSound(bank, { midi, drum: null, velocity });

  test('takes the nearest pitch of the layer and bends it by equal temperament', () => {
    expect(note(61, 72)).toEqual({ buffer: 'soft 60', rate: 2 ** (1 / 12), gain: 1 });
    expect(note(63, 72)?.buffer).toBe('soft 64');
    expect(note(72, 108)).toEqual({ buffer: 'strong 60', rate: 2, gain: 1 });
  });

  test('changes layer at velocity 90, and within a layer gain goes with the square of velocity', () => {
    expect([note(60, 89)?.buffer, note(60, 90)?.buffer]).toEqual(['soft 60', 'strong 60']);
    expect(note(60, 36)?.gain).toBeCloseTo(0.25, 9);
  });

  test('finds a sound for every percussion name, and none only when empty', () => {
    const drums = DRUM_NAMES.map((drum) => ({ buffer: drum, midi: null, drum, velocity: 110 }));
    const sound = (drum: string) => pickSound(drums, { midi: null, drum, velocity: 110 })?.buffer;
    expect(['clave', 'conga slap', 'cascara accent', 'timbales bell plain', 'güiro long', 'pulse low', 'unheard of'].map(sound)).toEqual([
      'clave',
      'conga slap',
      'shell',
      'bell',
      'guiro long',
      'pulse low',
      'shell',
    ]);
    expect(pickSound([], { midi: 60, drum: null, velocity: 90 })).toBeNull();
  });

  test('gives notes of the bass part to the bass and everything without pitch to the drums', () => {
    expect([
      instrumentOf({ part: 'bass', midi: 40 }),
      instrumentOf({ part: 'piano left', midi: 40 }),
      instrumentOf({ part: 'clave', midi: null }),
    ]).toEqual(['bass', 'piano', 'drums']);
  });
});

describe('sounds made by rule', () => {
  /** Cycles of the strongest period between 20 ms and 300 ms, by autocorrelation around the expected one. */
  function pitchOf(frames: Float32Array, expected: number): number {
    const period = SYNTHESISED_RATE / expected;
    let best = { lag: 0, match: Number.NEGATIVE_INFINITY };
    for (let lag = Math.floor(period * 0.94); lag <= Math.ceil(period * 1.06); lag += 1) {
      let match = 0;
      for (let index = 1200; index < 6000; index += 1) match += (frames[index] ?? 0) * (frames[index + lag] ?? 0);
      if (match > best.match) best = { lag, match };
    }
    return SYNTHESISED_RATE / best.lag;
  }

  test.each([
    [40, 82.407],
    [57, 220],
    [69, 440],
  ])('are in tune: MIDI %i sounds at %f Hz (A = 440, equal temperament)', (midi, hertz) => {
    for (const frames of [pianoTone(midi), bassTone(midi)])
      expect(Math.abs(1200 * Math.log2(pitchOf(frames, hertz) / hertz))).toBeLessThan(25);
  });

  test('begin and end in silence, never clip and are the same every time', () => {
    for (const frames of [pianoTone(36), pianoTone(96), bassTone(28), ...DRUM_NAMES.map(drumTone)]) {
      const peak = frames.reduce((high, value) => Math.max(high, Math.abs(value)), 0);
      expect(Math.abs(frames[0] ?? 1)).toBeLessThan(1e-6);
      expect(Math.abs(frames.at(-1) ?? 1)).toBeLessThan(1e-6);
      expect(peak).toBeGreaterThan(0.05);
      expect(peak).toBeLessThan(0.5);
    }
    expect(drumTone('clave')).toEqual(drumTone('clave'));
  });
});

describe('the ceiling', () => {
  test('changes nothing below its knee, always rises and never passes its limit', () => {
    for (const sum of [-0.75, -0.3, 0, 0.1, CEILING_KNEE]) expect(underCeiling(sum)).toBe(sum);
    let last = -2;
    for (let sum = -6; sum <= 6; sum += 0.01) {
      const value = underCeiling(sum);
      expect(value).toBeGreaterThanOrEqual(last);
      expect(Math.abs(value)).toBeLessThanOrEqual(CEILING_LIMIT);
      last = value;
    }
  });

  test('as a curve keeps silence silent', () => {
    const curve = ceilingCurve();
    expect(curve[(curve.length - 1) / 2]).toBe(0);
    expect(curve.at(-1)).toBeCloseTo(underCeiling(CEILING_INPUT), 6);
  });
});
