/**
 * A loudspeaker in the room of the microphone, through a real getUserMedia: Chromium's microphone is fed a recording of what the page is about
 * to play (count-in, clave, a piano, a room) with claps to it. Two claps at its beginning tell the page's test when to press Play, so
 * that the recording is about 120 ms late; how late exactly is worked out from the browser's own clocks, and the page must say the same.
 */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { countInTo } from '../../src/performance/count-in';

import { hearTake } from '../state/loudspeaker';
import { microphoneFrom, writeSound } from './room';
import { askedFor } from './rounds';
import { expectClean, witness } from './witness';

const TEMPO = 120;
const SECONDS_PER_TICK = 60 / (TEMPO * 960);
const LOOP_SECONDS = 3840 * SECONDS_PER_TICK;
const PASSES = 6;
const RATE = 48_000;
/** Two claps this far apart, then the count-in. */
const SYNC = { first: 1, apart: 0.35, begins: 3.5 } as const;
const LATE_SECONDS = 0.12;

const asked = askedFor();
const zero = SYNC.begins + 1920 * SECONDS_PER_TICK;
const passes = Array.from({ length: PASSES }, (_, pass) => zero + pass * LOOP_SECONDS);
const clicksOf = (events: typeof asked.events, from: number) =>
  events
    .filter(({ part }) => part === 'clave' || part === 'pulse')
    .map(({ tick, drum }) => ({ name: drum ?? '', at: from + tick * SECONDS_PER_TICK }));
const countIn = countInTo(asked.performance, asked.performance.fromTick, 1).events;
const clave = asked.performance.events.filter(({ part }) => part === 'clave');
const strokes = [...new Set(asked.events.map(({ tick }) => tick))].sort((a, b) => a - b);
const FILE = join(mkdtempSync(join(tmpdir(), 'room-')), 'loudspeaker.wav');
const TAKE = {
  seconds: zero + PASSES * LOOP_SECONDS + 0.5,
  clicks: [...clicksOf(countIn, zero), ...passes.flatMap((from) => clicksOf(clave, from))],
  claps: [SYNC.first, SYNC.first + SYNC.apart, ...passes.flatMap((from) => strokes.map((tick) => from + tick * SECONDS_PER_TICK))],
};
writeSound(
  FILE,
  hearTake({ rate: RATE, seed: 12, reverbSeconds: 0.3, reverbLevel: 0.08 }, TAKE, 0, { band: 0.15, piano: 0.08, noise: 0.001 }),
  RATE,
);

test.use(microphoneFrom(FILE));

interface Seen {
  /** Moment of the page's clock at which the recording's count-in begins in the microphone, and in the loudspeaker. */
  heardMs: number | null;
  soundedMs: number | null;
}

test('The page measures how late its loudspeaker reaches the microphone, says so, and places the claps by it', async ({ page }) => {
  const seen = witness(page);
  await page.addInitScript(
    ({ apart, wait, late }) => {
      const clocks: Seen = { heardMs: null, soundedMs: null };
      Object.assign(window, { testClocks: clocks });
      let before = Number.NEGATIVE_INFINITY;
      const Plain = window.AudioWorkletNode;
      window.AudioWorkletNode = class extends Plain {
        constructor(context: BaseAudioContext, name: string, options?: AudioWorkletNodeOptions) {
          super(context, name, options);
          this.port.addEventListener('message', ({ data }: MessageEvent<{ frames?: number[] }>) => {
            for (const frame of data.frames ?? []) {
              const at = frame / context.sampleRate;
              if (clocks.heardMs === null && Math.abs(at - before - apart) < 0.004)
                begin(performance.now() + 1000 * (at - context.currentTime + wait));
              before = at;
            }
          });
        }
      };
      const begin = (heardMs: number): void => {
        clocks.heardMs = heardMs;
        const press = () => document.querySelector<HTMLButtonElement>('button[aria-label="Play"], .play')?.click();
        // The page hands its first sound over 60 ms ahead.
        setTimeout(press, heardMs - 1000 * late - 80 - performance.now());
      };
      const start = AudioBufferSourceNode.prototype.start;
      AudioBufferSourceNode.prototype.start = function (this: AudioBufferSourceNode, when = 0, ...more: number[]) {
        const context = this.context as AudioContext;
        if (clocks.heardMs !== null && clocks.soundedMs === null && when > context.currentTime) {
          const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp();
          clocks.soundedMs = performanceTime + 1000 * (when - contextTime);
        }
        start.call(this, when, ...more);
      };
    },
    { apart: SYNC.apart, wait: SYNC.begins - SYNC.first - SYNC.apart, late: LATE_SECONDS },
  );
  await page.goto('./');
  await page.getByRole('button', { name: 'More' }).click();
  const field = page.getByRole('textbox', { name: 'half notes' });
  await field.fill(String(TEMPO));
  await field.press('Enter');
  await page.getByRole('button', { name: 'Less', exact: true }).click();
  await page.getByRole('group', { name: 'Loop' }).getByRole('button', { pressed: false }).click();
  // Once before, so that the sound is awake and the instruments are there.
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.locator('.now-card .panel[data-now]')).toHaveCount(1, { timeout: 20_000 });
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.getByRole('button', { name: 'Play along' }).click();
  const row = page.getByRole('region', { name: 'Play along' });
  await row.getByRole('button', { name: /Claps/ }).click();
  await expect(row).toContainText('Listening for claps');
  await expect(row).toContainText(/3 of \d passes clean|\d of 3 passes clean/, { timeout: 40_000 });
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  const report = page.getByRole('region', { name: 'What happened' });
  await expect(report).toContainText(/Your loudspeaker reaches the microphone after \d+ ms/);
  const said = Number(/after (\d+) ms/.exec((await report.textContent()) ?? '')?.[1]);
  const { heardMs, soundedMs } = await page.evaluate(() => (window as unknown as { testClocks: Seen }).testClocks);
  const late = Number(heardMs) - Number(soundedMs);
  test.info().annotations.push({
    type: 'loudspeaker',
    description: JSON.stringify({ said, late, report: await report.locator('h2').first().textContent() }),
  });
  await expect(report).toContainText('Clean');
  // A browser tells its clocks by whole buffers of some 10 ms; the first claps of a recording are placed before many readings were taken.
  expect(Math.abs(said - late), `said ${said} ms, by the browser's clocks ${late.toFixed(1)} ms`).toBeLessThanOrEqual(12);
  expectClean(seen);
});
