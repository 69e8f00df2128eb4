/** The whole job in a real browser: from opening the page to the sheet and the file on the music stand. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { type MidiData, type MidiEvent, parseMidi } from 'midi-file';
import { expectClean, growEars, loudestDuring, loudness, soundDeviceStates, witness } from './witness';

/** One clave cycle of two 4/4 bars, in ticks. */
const CYCLE = 3840;

const sounding = (page: Page) => page.locator('.now-card .panel[data-now]');
const transport = (page: Page) => page.getByRole('region', { name: 'Transport' });
const tempoShown = async (page: Page) =>
  Number(await transport(page).getByRole('group', { name: 'Tempo' }).getByRole('status').textContent());

/** Sets the tempo in half notes a minute, as a person would: More, type, Enter, Less. */
async function setTempo(page: Page, tempo: number) {
  await transport(page).getByRole('button', { name: 'More' }).click();
  const field = page.getByRole('textbox', { name: 'half notes' });
  await field.fill(String(tempo));
  await field.press('Enter');
  await transport(page).getByRole('button', { name: 'Less', exact: true }).click();
}

/** Ticks of the bars that sounded, in order, during `forMs`. */
async function barsHeard(page: Page, forMs: number): Promise<number[]> {
  return page.evaluate(async (duration) => {
    const heard: number[] = [];
    const until = performance.now() + duration;
    while (performance.now() < until) {
      const panel = document.querySelector<HTMLElement>('.now-card .panel[data-now]');
      const tick = panel ? Number(panel.dataset.tick) : null;
      if (tick !== null && tick !== heard.at(-1)) heard.push(tick);
      await new Promise((resolve) => requestAnimationFrame(resolve));
    }
    return heard;
  }, forMs);
}

const sidesShown = (page: Page) =>
  page.locator('.now-card .panel').evaluateAll((panels) => panels.map((panel) => panel.getAttribute('data-side')).join('-'));

interface Onset {
  readonly tick: number;
  readonly note: number;
}

function onsets(track: readonly MidiEvent[]): Onset[] {
  let tick = 0;
  return track.flatMap((event) => {
    tick += event.deltaTime;
    return event.type === 'noteOn' && event.velocity > 0 ? [{ tick, note: event.noteNumber }] : [];
  });
}

const trackNamed = (file: MidiData, name: RegExp) =>
  file.tracks.find((track) => track.some((event) => event.type === 'trackName' && name.test(event.text))) ?? [];

test('A chart becomes a montuno that is heard, looped, slowed down, flipped, made busier, saved and printed', async ({ page }, info) => {
  const seen = witness(page);
  await growEars(page);
  await page.goto('./');

  // Open: the Practise place, on a demo chart of the house band, with one thing to do.
  await expect(page.getByRole('link', { name: 'Practise' })).toHaveAttribute('aria-current', 'page');
  const title = (await page.getByRole('heading', { level: 1 }).textContent()) ?? '';
  expect(title).not.toBe('');
  expect(await loudness(page), 'nothing sounds before the first press').toBe(0);

  // Play: it is heard, and what is drawn follows what is heard.
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Stop', exact: true })).toBeVisible();
  await expect.poll(() => loudness(page), { message: 'sound', intervals: [20], timeout: 5_000 }).toBeGreaterThan(0.001);
  expect(await soundDeviceStates(page)).toEqual(['running']);
  await expect(sounding(page)).toHaveCount(1, { timeout: 15_000 });
  const firstBar = await sounding(page).getAttribute('data-tick');
  await expect(sounding(page)).not.toHaveAttribute('data-tick', firstBar ?? '');

  // Loop one cycle at 60 % of the tempo: a fast one, so that several cycles go by while we look.
  const tempo = 160;
  await setTempo(page, tempo);
  const slow = Math.round(tempo * 0.6);
  await setTempo(page, slow);
  expect(await tempoShown(page)).toBe(slow);
  await transport(page).getByRole('group', { name: 'Loop' }).getByRole('button', { pressed: false }).click();
  const loopButton = transport(page).getByRole('group', { name: 'Loop' }).getByRole('button', { pressed: true });
  await expect(loopButton).toHaveText(/Loop \d+–\d+/);
  const [from = 0, to = 0] = ((await loopButton.textContent()) ?? '').match(/\d+/g)?.map(Number) ?? [];
  expect(to - from, 'a loop of one clave cycle is two bars').toBe(1);
  const loopTicks = [(from - 1) * 1920, from * 1920];
  // The loop stands once its first bar comes after its second: until then the form may go on by a cycle.
  for (const tick of [...loopTicks].reverse()) await expect(sounding(page)).toHaveAttribute('data-tick', String(tick), { timeout: 15_000 });
  const cycleMs = (4 * 60_000) / slow;
  const looped = await barsHeard(page, cycleMs * 2.3);
  expect(looped.length, 'both bars, more than once').toBeGreaterThanOrEqual(4);
  expect([...new Set(looped)].sort((a, b) => a - b)).toEqual(loopTicks);
  expect(looped.every((tick, index) => index === 0 || tick !== looped[index - 1])).toBe(true);

  // Flip the direction: it lands on a cycle and says so; the panels change places.
  const before = await sidesShown(page);
  await transport(page)
    .getByRole('button', { name: /^Direction 2-3/ })
    .click();
  await expect(page.getByRole('status').filter({ hasText: /3-2 from bar \d+/ })).toBeVisible();
  await expect.poll(() => sidesShown(page), { timeout: 15_000 }).toBe(before === '2-3' ? '3-2' : '2-3');
  expect(await loudestDuring(page, 500), 'it plays on through the change').toBeGreaterThan(0.001);

  // Next level.
  await transport(page).getByRole('button', { name: 'Busier' }).click();
  await expect(transport(page).getByRole('group', { name: 'Level' })).toContainText('moving line');

  // Stop: silent within 50 ms, by our own meter a little later than that.
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.waitForTimeout(150);
  expect(await loudestDuring(page, 300), 'silence after Stop').toBeLessThan(0.0005);
  await expect(sounding(page)).toHaveCount(0);

  // The MIDI file, read back by an independent reader: type 1, 480 ticks, the tempo, the parts, the flipped rhythm.
  await page.getByRole('link', { name: 'Chart' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'MIDI file' }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toMatch(/^[\w().,♯♭ -]+\.mid$/u);
  const file = parseMidi(readFileSync(await saved.path()));
  expect(file.header).toMatchObject({ format: 1, ticksPerBeat: 480 });
  const setTempos = (file.tracks[0] ?? []).flatMap((event) => (event.type === 'setTempo' ? [event.microsecondsPerBeat] : []));
  expect(setTempos[0], 'microseconds to the quarter note').toBe(Math.round(60_000_000 / (2 * slow)));
  const right = onsets(trackNamed(file, /RH|right/i));
  const clave = onsets(trackNamed(file, /clave/i));
  expect(right.length).toBeGreaterThan(8);
  expect(
    right.every(({ tick }) => tick % 240 === 0),
    'every stroke on an eighth',
  ).toBe(true);
  expect(onsets(trackNamed(file, /bass/i)).length).toBeGreaterThan(1);
  // Son clave from the 3-side: 1, & of 2, 4 | 2, 3 (R. Santos, "Patrones de songo y salsa", 2009).
  expect(clave.filter(({ tick }) => tick < CYCLE).map(({ tick }) => tick / 240)).toEqual([0, 3, 6, 10, 12]);

  // The sheet, printed by the browser itself.
  await page.getByRole('link', { name: 'Sheet' }).click();
  await expect(page.getByRole('main')).toContainText(title);
  await expect(page.getByRole('main').locator('svg').first()).toBeVisible();
  await page.waitForTimeout(500);
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
  mkdirSync(info.outputDir, { recursive: true });
  const path = info.outputPath('sheet.pdf');
  writeFileSync(path, pdf);
  const text = textOfPdf(path);
  if (text !== null) {
    expect(text).toContain(title);
    expect(text).toContain('3-2');
    expect(text).not.toMatch(/undefined|NaN|\[object/);
  }
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  expectClean(seen);
});

test('What is set for a chart is there again after the page was closed and opened', async ({ page }) => {
  const seen = witness(page);
  await page.goto('./');
  await setTempo(page, 61);
  await transport(page)
    .getByRole('button', { name: /^Direction 2-3/ })
    .click();
  await page.waitForTimeout(600);
  await page.reload();
  await expect(transport(page).getByRole('button', { name: /^Direction 3-2/ })).toBeVisible();
  expect(await tempoShown(page)).toBe(61);
  expectClean(seen);
});

/** The text of a PDF by an independent reader, or null where that reader (poppler's pdftotext) is not installed. */
function textOfPdf(path: string): string | null {
  try {
    return execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}
