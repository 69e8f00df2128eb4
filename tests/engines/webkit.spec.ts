/** A smoke test in WebKit: the page opens and draws, sound is rendered offline as elsewhere, and it says that there is no Web MIDI. */
import { expect, test } from '@playwright/test';
import { type ServedPage, servePage } from '../browser/audio/serve-page';
import { findWebKit, NO_WEBKIT } from './find-engines';
import { type Session, startWebKit } from './webdriver';

let session: Session;
let sounds: ServedPage;
test.beforeAll(async () => {
  sounds = await servePage();
  const found = findWebKit();
  if (found === null) throw new Error(NO_WEBKIT);
  session = await startWebKit(found);
});
test.afterAll(async () => {
  await session?.close();
  sounds?.close();
});

const button = (name: string) => `//button[normalize-space()='${name}']`;
const textOf = (selector: string) => session.run<string>(`return document.querySelector(${JSON.stringify(selector)})?.innerText ?? ''`);

test('The page opens, draws a cycle of two panels, and the band comes in', async ({ baseURL }, info) => {
  await session.open(baseURL ?? '');
  await expect.poll(() => session.run<number>(`return document.querySelectorAll('.now-card .panel').length`)).toBe(2);
  await session.run(`window.wrong = []; addEventListener('error', (event) => window.wrong.push(String(event.message)));
    addEventListener('unhandledrejection', (event) => window.wrong.push(String(event.reason)));`);
  await session.click(button('Play'));
  await expect.poll(() => session.run<number>(`return document.querySelectorAll('.now-card .panel[data-now]').length`)).toBe(1);
  await info.attach('playing', { body: await session.picture(), contentType: 'image/png' });
  await session.click(button('Stop'));
  for (const place of ['chart', 'sheet', 'drills', 'journal']) {
    await session.run(`location.hash = '#/${place}'`);
    await expect.poll(() => textOf('main').then((text) => text.length), { message: place }).toBeGreaterThan(40);
  }
  expect(await session.run(`return window.wrong`)).toEqual([]);
});

test('It says that this browser has no MIDI, and what works in its place', async ({ baseURL }) => {
  await session.open(`${baseURL}#/practise`);
  expect(await session.run(`return typeof navigator.requestMIDIAccess`), 'WebKit has no Web MIDI').toBe('undefined');
  await expect.poll(() => textOf('main')).toContain('Play along');
  await session.click(button('Play along'));
  await expect.poll(() => textOf('main')).toContain('What do you play on?');
  await session.click(`//button[starts-with(normalize-space(), 'MIDI keyboard')]`);
  await expect.poll(() => textOf('main')).toContain('This browser has no MIDI');
});

test('Sounds come out on their frames, and Stop is silent within 50 ms, rendered offline', async () => {
  await session.open(sounds.address);
  await expect.poll(() => session.run(`return typeof window.bench`)).toBe('object');
  const frames = [4800, 4801, 9600, 12_345, 48_000, 77_777];
  expect(await session.run(`return window.bench.impulses(${JSON.stringify(frames)}, null)`)).toEqual(frames);
  const stopped = await session.run<{ before: number; after: number; left: number }>(`return window.bench.stopped('made')`);
  expect(stopped.before).toBeGreaterThan(0.02);
  expect(stopped.after).toBeLessThan(1e-5);
  expect(stopped.left).toBe(0);
});

test('The recordings are decoded, and each begins within 3 ms', async () => {
  await session.open(sounds.address);
  await expect.poll(() => session.run(`return typeof window.bench`)).toBe('object');
  const files = await session.run<{ file: string; onset: number; peak: number }[]>(`return window.bench.onsets()`);
  expect(files).toHaveLength(65);
  for (const { file, onset, peak } of files) {
    // Its decoder shows the slow beginning of the maracas a third of a millisecond later than the others do.
    expect(onset, `${file} begins`).toBeLessThan(0.003);
    expect(peak, `${file} peak`).toBeGreaterThan(0.03);
  }
});
