/** Claps through a real getUserMedia: Chromium's microphone is fed from a file, the detector runs in its worklet under the page's own content policy. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';

import { microphoneFrom, writeRoom } from './room';
import { expectClean, witness } from './witness';

/** Seven seconds that go round: two claps a half second apart and, twice, two that are 125 ms apart; clicks every half second; voices and noise. */
const ROOM = {
  seconds: 7,
  claps: [0.5, 1.0, 1.5, 1.625, 2.3, 2.8, 3.3, 3.9, 4.5, 4.625, 5.2, 5.7, 6.3],
  clicks: Array.from({ length: 14 }, (_, index) => 0.25 + index * 0.5),
  noise: 0.002,
  voice: 0.04,
};
const FILE = join(mkdtempSync(join(tmpdir(), 'room-')), 'room.wav');
writeRoom(FILE, ROOM);

test.use(microphoneFrom(FILE));

/** Hears what the worklet posts, beside the page. */
async function tapWorklet(page: Page) {
  await page.addInitScript(() => {
    const heard: number[] = [];
    Object.assign(window, { testOnsets: heard });
    const Plain = window.AudioWorkletNode;
    window.AudioWorkletNode = class extends Plain {
      constructor(context: BaseAudioContext, name: string, options?: AudioWorkletNodeOptions) {
        super(context, name, options);
        this.port.addEventListener('message', ({ data }: MessageEvent<{ kind: string; frames?: number[] }>) => {
          for (const frame of data.frames ?? []) heard.push(frame / context.sampleRate);
        });
      }
    };
  });
}

const row = (page: Page) => page.getByRole('region', { name: 'Play along' });
const onsets = (page: Page) => page.evaluate(() => (window as unknown as { testOnsets: number[] }).testOnsets);

/** Matches onsets to the claps of the file that goes round: hits, misses, false ones and the errors in milliseconds, from the best common offset. */
function compare(found: readonly number[], from: number, to: number) {
  const place = (time: number, offset: number) => (((time - offset) % ROOM.seconds) + ROOM.seconds) % ROOM.seconds;
  const nearest = (at: number) =>
    ROOM.claps.reduce((best, clap) => (Math.abs(at - clap) < Math.abs(at - best) ? clap : best), Number.POSITIVE_INFINITY);
  const inside = found.filter((time) => time >= from && time < to);
  const errorsAt = (offset: number) => inside.map((time) => 1000 * (place(time, offset) - nearest(place(time, offset))));
  // From every onset, not from the first alone: that one may be half a clap, where the recording began.
  const offsets = inside.flatMap((time) => ROOM.claps.map((clap) => time - clap));
  const hitsOf = (offset: number) => errorsAt(offset).filter((error) => Math.abs(error) <= 25).length;
  const offset = offsets.reduce((best, each) => (hitsOf(each) > hitsOf(best) ? each : best), offsets[0] ?? 0);
  const errors = errorsAt(offset).filter((error) => Math.abs(error) <= 25);
  const middle = [...errors].sort((a, b) => a - b)[errors.length >> 1] ?? 0;
  const late = errors.map((error) => Math.abs(error - middle)).sort((a, b) => a - b);
  const hits = errors.length;
  const asked = ((to - from) / ROOM.seconds) * ROOM.claps.length;
  return { hits, found: inside.length, asked, medianErrorMs: late[late.length >> 1] ?? Number.POSITIVE_INFINITY };
}

test('Claps are found in a room with clicks and voices, to a few milliseconds, and nothing else is', async ({ page }) => {
  const seen = witness(page);
  await tapWorklet(page);
  await page.goto('./');
  await page.getByRole('button', { name: 'Play along' }).click();
  await row(page).getByRole('button', { name: /Claps/ }).click();
  await expect(row(page)).toContainText('Listening for claps');
  await expect.poll(async () => (await onsets(page)).length, { timeout: 30_000, intervals: [500] }).toBeGreaterThanOrEqual(16);
  await page.waitForTimeout(2_000);
  const found = await onsets(page);
  const from = (found[0] ?? 0) - 0.05;
  const whole = Math.floor(((found.at(-1) ?? 0) - from) / ROOM.seconds) * ROOM.seconds;
  const { hits, found: all, asked, medianErrorMs } = compare(found, from, from + whole);
  const precision = hits / all;
  const recall = hits / asked;
  const f = (2 * precision * recall) / (precision + recall);
  test.info().annotations.push({ type: 'claps', description: JSON.stringify({ hits, all, asked, f, medianErrorMs }) });
  expect(f, `F at 25 ms: ${hits} of ${asked} found, ${all - hits} false`).toBeGreaterThanOrEqual(0.95);
  expect(medianErrorMs).toBeLessThanOrEqual(3);
  // Closing lets the device go: every track has ended.
  await row(page).getByRole('button', { name: 'Close' }).click();
  await expect(row(page)).toHaveCount(0);
  expectClean(seen);
});

test('A microphone that is taken away in the middle of a take is a sentence with a way forward', async ({ page }) => {
  await page.addInitScript(() => {
    const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
    navigator.mediaDevices.getUserMedia = async (constraints) => {
      const stream = await ask(constraints);
      Object.assign(window, { testStream: stream, testConstraints: constraints });
      return stream;
    };
  });
  await page.goto('./');
  await page.getByRole('button', { name: 'Play along' }).click();
  await row(page).getByRole('button', { name: /Claps/ }).click();
  await expect(row(page)).toContainText('Listening for claps');
  const asked = await page.evaluate(() => (window as unknown as { testConstraints: MediaStreamConstraints }).testConstraints);
  expect(asked.audio).toMatchObject({ echoCancellation: false, noiseSuppression: false, autoGainControl: false });
  await page.evaluate(() =>
    (window as unknown as { testStream: MediaStream }).testStream.getAudioTracks()[0]?.dispatchEvent(new Event('ended')),
  );
  await expect(row(page)).toContainText('The microphone was taken away');
  await row(page).getByRole('button', { name: 'Try again' }).click();
  await expect(row(page)).toContainText('Listening for claps');
});

test('A microphone whose voice processing stays on is said to be one, and one that is refused asks for permission', async ({ page }) => {
  await page.addInitScript(() => {
    const settings = MediaStreamTrack.prototype.getSettings;
    MediaStreamTrack.prototype.getSettings = function (this: MediaStreamTrack) {
      return { ...settings.call(this), noiseSuppression: true };
    };
  });
  await page.goto('./');
  await page.getByRole('button', { name: 'Play along' }).click();
  await row(page).getByRole('button', { name: /Claps/ }).click();
  await expect(row(page)).toContainText('voice processing');
  await page.evaluate(() => {
    navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('no', 'NotAllowedError'));
  });
  await row(page).getByText('Device').click();
  await row(page).getByRole('button', { name: 'Another way to play' }).click();
  await row(page).getByRole('button', { name: /Claps/ }).click();
  await expect(row(page)).toContainText('The microphone was not allowed');
});

/** Keeps the stream and the contexts that the page opens, for a test to mute and suspend. */
async function keepMicrophone(page: Page) {
  await page.addInitScript(() => {
    const kept: { stream?: MediaStream; contexts: AudioContext[] } = { contexts: [] };
    Object.assign(window, { testMicrophone: kept });
    const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
    navigator.mediaDevices.getUserMedia = async (constraints) => {
      kept.stream = await ask(constraints);
      return kept.stream;
    };
    const Source = window.MediaStreamAudioSourceNode;
    window.MediaStreamAudioSourceNode = class extends Source {
      constructor(context: AudioContext, options: MediaStreamAudioSourceOptions) {
        super(context, options);
        kept.contexts.push(context);
      }
    };
  });
  const mute = (muted: boolean) =>
    page.evaluate((now) => {
      const [track] = (window as unknown as { testMicrophone: { stream: MediaStream } }).testMicrophone.stream.getAudioTracks();
      if (!track) throw new Error('no track');
      Object.defineProperty(track, 'muted', { value: now, configurable: true });
      track.dispatchEvent(new Event(now ? 'mute' : 'unmute'));
    }, muted);
  const suspend = () =>
    page.evaluate(() => (window as unknown as { testMicrophone: { contexts: AudioContext[] } }).testMicrophone.contexts.at(-1)?.suspend());
  return { mute, suspend };
}

test('A microphone that the system mutes, or the browser puts to sleep, says so and goes on', async ({ page }) => {
  const seen = witness(page);
  const { mute, suspend } = await keepMicrophone(page);
  await tapWorklet(page);
  await page.goto('./');
  await page.getByRole('button', { name: 'Play along' }).click();
  await row(page).getByRole('button', { name: /Claps/ }).click();
  await expect(row(page)).toContainText('Listening for claps');
  await mute(true);
  await expect(row(page)).toContainText('The microphone is muted');
  await expect(row(page).getByRole('button', { name: 'Ask for it again' })).toBeVisible();
  await mute(false);
  await expect(row(page)).toContainText('Listening for claps');
  await suspend();
  await expect(row(page)).toContainText('put the microphone to sleep');
  const before = (await onsets(page)).length;
  await row(page).getByRole('button', { name: 'Go on listening' }).press('Enter');
  await expect(row(page)).toBeFocused();
  await expect(row(page)).toContainText('Listening for claps');
  await expect.poll(async () => (await onsets(page)).length, { timeout: 15_000 }).toBeGreaterThan(before + 2);
  expectClean(seen);
});
