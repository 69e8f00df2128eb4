/** The whole job in Firefox: opened, heard, looped, flipped, saved as MIDI and as a sheet, kept; and what it says of MIDI keyboards. */
import { expect, type Page, test } from '@playwright/test';
import { parseMidi } from 'midi-file';
import { growEars, loudestDuring, loudness, soundDeviceStates } from '../browser/witness';
import { shownText } from '../exchange/pdf/read-pdf';

const transport = (page: Page) => page.getByRole('region', { name: 'Transport' });
const sounding = (page: Page) => page.locator('.now-card .panel[data-now]');
const sides = (page: Page) =>
  page.locator('.now-card .panel').evaluateAll((panels) => panels.map((panel) => panel.getAttribute('data-side')).join('-'));

/** Everything the page complains about; Playwright's own style for screenshots, refused by our policy, is not the page's. */
function complaints(page: Page): readonly string[] {
  const found: string[] = [];
  page.on('pageerror', ({ message }) => {
    if (!message.includes('style-src')) found.push(message);
  });
  return found;
}

declare global {
  interface Window {
    testFiles?: Blob[];
  }
}

/** Keeps what the page hands out as files: downloads are not reported for this browser. Call before the page opens. */
async function catchFiles(page: Page) {
  await page.addInitScript(() => {
    const files: Blob[] = [];
    window.testFiles = files;
    const make = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (file: Blob | MediaSource): string => {
      if (file instanceof Blob) files.push(file);
      return make(file);
    };
  });
}

/** The bytes of the file of a kind that was handed out last. */
async function fileOf(page: Page, type: string): Promise<Uint8Array> {
  await expect
    .poll(() => page.evaluate((kind) => window.testFiles?.some((file) => file.type === kind), type), { timeout: 60_000 })
    .toBe(true);
  const bytes = await page.evaluate(async (kind) => {
    const file = window.testFiles?.findLast((each) => each.type === kind);
    return file ? [...new Uint8Array(await file.arrayBuffer())] : [];
  }, type);
  return Uint8Array.from(bytes);
}

test('A chart is heard, looped, flipped, made busier, and stops in silence', async ({ page }) => {
  const wrong = complaints(page);
  await growEars(page);
  await page.goto('./');
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect.poll(() => loudness(page), { message: 'sound', intervals: [20] }).toBeGreaterThan(0.001);
  expect(await soundDeviceStates(page)).toEqual(['running']);
  await expect(sounding(page)).toHaveCount(1);
  await transport(page).getByRole('group', { name: 'Loop' }).getByRole('button', { pressed: false }).click();
  await expect(transport(page).getByRole('group', { name: 'Loop' }).getByRole('button', { pressed: true })).toHaveText(/Loop \d+–\d+/);
  const before = await sides(page);
  await transport(page)
    .getByRole('button', { name: /^Direction 2-3/ })
    .click();
  await expect.poll(() => sides(page)).toBe(before === '2-3' ? '3-2' : '2-3');
  await transport(page).getByRole('button', { name: 'Busier' }).click();
  expect(await loudestDuring(page, 600), 'it plays on through the changes').toBeGreaterThan(0.001);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.waitForTimeout(150);
  expect(await loudestDuring(page, 300), 'silence after Stop').toBeLessThan(0.0005);
  expect(wrong).toEqual([]);
});

test('The MIDI file and the sheet are saved and can be read', async ({ page }) => {
  const wrong = complaints(page);
  await catchFiles(page);
  await page.goto('./');
  const title = (await page.getByRole('heading', { level: 1 }).textContent()) ?? '';
  await page.getByRole('link', { name: 'Chart' }).click();
  await page.getByRole('button', { name: 'MIDI file' }).click();
  const midi = parseMidi(await fileOf(page, 'audio/midi'));
  expect(midi.header).toMatchObject({ format: 1, ticksPerBeat: 480 });
  expect(midi.tracks.length).toBeGreaterThan(4);
  await page.getByRole('link', { name: 'Sheet' }).click();
  await expect(page.getByRole('main').locator('svg').first()).toBeVisible();
  await page.getByRole('button', { name: 'Take along' }).click();
  await page.getByRole('button', { name: 'Save Sheet (PDF)' }).click();
  const sheet = await fileOf(page, 'application/pdf');
  expect(new TextDecoder('latin1').decode(sheet.subarray(0, 5))).toBe('%PDF-');
  expect(shownText(sheet)).toContain(title);
  expect(wrong).toEqual([]);
});

test('What is typed and set is there again after the page was closed and opened', async ({ page }) => {
  const wrong = complaints(page);
  await page.goto('#/chart');
  const field = page.getByRole('textbox', { name: 'Chart text' });
  await expect(field).toBeVisible();
  // Typed as a person types: this browser's driver fills fields without the page hearing of it.
  await field.click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('title: Lamp on the Pier\nclave: 3-2 son\n\n[A]\n| Gm7 | C7 | Fmaj7 | % |\n');
  await page.waitForTimeout(1500);
  await page.reload();
  await expect(page.getByRole('textbox', { name: 'Chart text' })).toHaveValue(/Lamp on the Pier/);
  await page.getByRole('link', { name: 'Practise' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Lamp on the Pier');
  await expect(transport(page).getByRole('button', { name: /^Direction 3-2/ })).toBeVisible();
  expect(wrong).toEqual([]);
});

test('Playing along by computer keys is heard and judged', async ({ page }) => {
  const wrong = complaints(page);
  await page.goto('./');
  await page.getByRole('button', { name: 'Play along' }).click();
  await page
    .getByRole('region', { name: 'Play along' })
    .getByRole('button', { name: /^Computer keys/ })
    .click();
  await transport(page).getByRole('group', { name: 'Loop' }).getByRole('button', { pressed: false }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(sounding(page)).toHaveCount(1);
  for (let stroke = 0; stroke < 12; stroke += 1) {
    await page.keyboard.press('q');
    await page.waitForTimeout(250);
  }
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect(page.getByRole('region', { name: 'What happened' })).toBeVisible();
  expect(wrong).toEqual([]);
});
