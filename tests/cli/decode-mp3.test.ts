import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { loadMp3Decoder } from '../../src/cli/decode-mp3';
import { loadSounds } from '../../src/cli/sounds';
import { BASS_SAMPLES, DRUM_SAMPLES, PIANO_SAMPLES } from '../../src/performance/sounds/sample-set';

describe('the recordings decoded without a browser', () => {
  test('begin within 2.5 ms of their first frame, are as long as they were cut and loud enough to be heard', async () => {
    const decode = await loadMp3Decoder();
    for (const { file } of [...PIANO_SAMPLES, ...BASS_SAMPLES, ...DRUM_SAMPLES]) {
      const { frames, rate } = decode(readFileSync(`public/samples/${file}`));
      const peak = frames.reduce((high, value) => Math.max(high, Math.abs(value)), 0);
      const onset = frames.findIndex((value) => Math.abs(value) > peak / 50) / rate;
      expect(rate).toBe(44_100);
      expect(onset, `${file} begins`).toBeLessThan(0.0025);
      expect(peak, `${file} peak`).toBeGreaterThan(0.03);
    }
    // The seconds that the rendering script keeps of each drum, to the frame.
    for (const { file, seconds } of DRUM_SAMPLES)
      expect(decode(readFileSync(`public/samples/${file}`)).frames.length, file).toBe(Math.round(seconds * 44_100));
  });

  test('that are not there are named in one line', async () => {
    expect(await loadSounds(['../nowhere/'])).toEqual({ ok: false, faults: ['cannot use the recording piano-36-72.mp3: no such file'] });
  });
});
