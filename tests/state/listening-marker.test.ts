/** The stroke that measures the delay from loudspeaker to microphone must be heard as a clap; the clave, which sounds while somebody claps, must not. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadMp3Decoder } from '../../src/cli/decode-mp3';
import { PERCUSSION_SOUNDS } from '../../src/performance/sounds/percussion-sounds';
import { createClapOnsets } from '../../src/practice/clap-onsets';

const STARTS = [0.5, 1, 1.5, 2, 2.5, 3];

/** Milliseconds after its beginning at which each stroke of a recording is found, at a loudness. */
async function foundAt(file: string, loudness: number): Promise<number[]> {
  const decode = await loadMp3Decoder();
  const { frames, rate } = decode(readFileSync(`public/samples/${file}`));
  const peak = frames.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  const sound = new Float32Array(4 * rate);
  for (const start of STARTS)
    frames.forEach((sample, frame) => {
      const at = Math.round(start * rate) + frame;
      if (at < sound.length) sound[at] = (sound[at] ?? 0) + (loudness * sample) / peak;
    });
  const claps = createClapOnsets(rate);
  const found: number[] = [];
  for (let from = 0; from + 128 <= sound.length; from += 128) {
    const many = claps.push(sound.subarray(from, from + 128), from);
    for (const frame of claps.frames.subarray(0, many)) found.push((1000 * frame) / rate - 500 * Math.floor(frame / rate / 0.5));
  }
  return found;
}

describe('the strokes that a microphone is measured by', () => {
  it('are played by the shell', () => {
    expect(PERCUSSION_SOUNDS['cascara accent']).toBe('shell');
  });

  it.each([0.02, 0.1, 0.4])('are all found at a loudness of %s, about two milliseconds after they begin', async (loudness) => {
    const found = await foundAt('shell.mp3', loudness);
    expect(found).toHaveLength(STARTS.length);
    for (const at of found) expect(Math.abs(at - 2)).toBeLessThan(0.7);
  });

  it('are not the clave', async () => {
    for (const loudness of [0.02, 0.1, 0.4]) expect(await foundAt('clave.mp3', loudness)).toEqual([]);
  });
});
