import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { shownText } from '../exchange/pdf/read-pdf';
import { readWav } from '../exchange/wav/read-wav';

// Decoding, engraving and mixing take their time on a busy machine.
test.setTimeout(150_000);

/** Browsers without a way to write to the disk piece by piece save by a download, which a test can read. */
const withoutPicker = (page: Page) => page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));

/** Opens the panel over the first demo's sheet; collects what the page complains about. */
async function openPanel(page: Page): Promise<string[]> {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' && !message.text().startsWith('Failed to load resource')) errors.push(message.text());
  });
  await page.goto('#/sheet');
  await page.getByRole('button', { name: 'Take along' }).click();
  await expect(page.getByRole('button', { name: 'Save The pack (zip)' })).toBeVisible();
  return errors;
}

async function saved(page: Page, name: string) {
  const waiting = page.waitForEvent('download', { timeout: 120_000 });
  await page.getByRole('button', { name, exact: true }).click();
  const download = await waiting;
  return { name: download.suggestedFilename(), bytes: new Uint8Array(readFileSync(await download.path())) };
}

test('the sheet as a file has the pages, the title, the chords and the direction of the print', async ({ page }) => {
  await withoutPicker(page);
  const errors = await openPanel(page);
  const pages = await page.locator('.sheet-page').count();
  const { name, bytes } = await saved(page, 'Save Sheet (PDF)');
  expect(name).toBe('last-ferry_D_2-3-son_level-2.pdf');
  const text = shownText(bytes);
  for (const word of ['Last Ferry', 'Em7', 'B7', '2-3', 'son', `${pages} of ${pages}`]) expect(text).toContain(word);
  expect(
    Buffer.from(bytes)
      .toString('latin1')
      .match(/\/Type \/Page /g),
  ).toHaveLength(pages);
  // The sheet on the screen is as it was, its choice of paper included.
  await expect(page.getByRole('radio', { name: 'A4' })).toBeChecked();
  await expect(page.locator('.take-along-work')).toContainText('Saved: last-ferry');
  expect(errors).toEqual([]);
});

test('a play-along is made in a worker under the strict policy, as long as the form to the frame', async ({ page }) => {
  await withoutPicker(page);
  const errors = await openPanel(page);
  const { name, bytes } = await saved(page, 'Save Play-along (WAV)');
  expect(name).toMatch(/_half-\d+_without-piano\.wav$/);
  const tempo = Number(/half-(\d+)/.exec(name)?.[1]);
  const { left, rate } = readWav(bytes);
  const halfNotes = (left.length / rate / 60) * tempo;
  // Whole bars of two half notes.
  expect(Math.abs(left.length - Math.round((Math.round(halfNotes / 2) * 2 * 60 * rate) / tempo))).toBe(0);
  const peak = left.reduce((high, value) => Math.max(high, Math.abs(value)), 0) / 32_768;
  expect(peak).toBeGreaterThan(0.05);
  expect(peak).toBeLessThan(0.8913);
  expect(errors).toEqual([]);
});

test('cancelled half-way, on a disk that refuses, without recordings: one sentence each, and nothing on the disk', async ({ page }) => {
  await page.addInitScript(() => {
    const disk = { written: 0, closed: 0, aborted: 0, full: false };
    Object.assign(window, {
      disk,
      showSaveFilePicker: async () => ({
        createWritable: async () => ({
          write: async (bytes: Uint8Array) => {
            disk.written += bytes.length;
            if (disk.full) throw new DOMException('no room', 'QuotaExceededError');
          },
          close: async () => {
            disk.closed += 1;
          },
          abort: async () => {
            disk.aborted += 1;
          },
        }),
      }),
    });
  });
  const disk = () => page.evaluate(() => (window as unknown as { disk: { written: number; closed: number; aborted: number } }).disk);
  await openPanel(page);
  const work = page.locator('.take-along-work');
  const soon = { timeout: 60_000 };
  await page.route('**/samples/*.mp3', (route) => route.abort());
  await page.getByRole('button', { name: 'Save Play-along (WAV)' }).click();
  await expect(work).toContainText('The recordings could not be loaded', soon);
  await page.unroute('**/samples/*.mp3');

  await page.getByRole('button', { name: 'All twelve' }).click();
  // Without the slow first files there is something on the disk soon.
  await page.getByRole('checkbox', { name: 'Sheet (PDF)' }).uncheck();
  await page.getByRole('checkbox', { name: 'MusicXML' }).uncheck();
  await page.getByRole('button', { name: 'Save The pack (zip)' }).click();
  await expect.poll(async () => (await disk()).written, { timeout: 90_000 }).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(work).toHaveText('Cancelled. Nothing was saved.');

  await page.evaluate(() => Object.assign((window as unknown as { disk: object }).disk, { full: true }));
  await page.getByRole('button', { name: 'Save Play-along (WAV)' }).click();
  await expect(work).toContainText('The file could not be written: the disk is full', soon);
  expect(await disk()).toMatchObject({ closed: 0, aborted: 3 });
});
