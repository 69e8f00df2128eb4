/** What people and the world get wrong: each gives one clear sentence, nothing typed is lost, and the console stays clean. */
import { expect, type Page, test } from '@playwright/test';
import { expectClean, growEars, loudness, witness } from './witness';

const editor = (page: Page) => page.getByRole('textbox', { name: 'Chart text' });
const faults = (page: Page) => page.getByRole('region', { name: /faults?$/ });

async function openChart(page: Page) {
  await page.goto('./#/chart');
  await expect(editor(page)).toBeVisible();
}

const HEAD = 'title: Night Boat\nkey: D\nclave: 2-3 son\ntempo: half = 92\n\n[A]\n';
const GOOD = `${HEAD}| Em7 | A7 | D6 | B7b9 |\n`;

/** Charts with a fault: what is typed, and what the list of faults must say about it. */
const FAULTY: readonly (readonly [string, string, RegExp])[] = [
  ['an empty chart', '', /expected/],
  ['an unknown symbol', `${HEAD}| Em7 | Qx7 | D6 | B7b9 |\n`, /Line 7, column 9.*Qx7.*expected/s],
  ['a repeat that is never closed or opened', `${HEAD}| Em7 | A7 :|: D6 |\n|: B7b9 |\n`, /expected/],
  ['a form that names no section', `${GOOD}\nform: A, Bridge\n`, /Bridge.*expected/s],
  ['a bar with five chords', `${HEAD}| Em7 A7 D6 B7 Em7 | A7 |\n`, /Line 7.*expected/s],
  ['a bare tempo', GOOD.replace('half = 92', '92'), /half = 92.*quarter = 92|quarter = 92.*half = 92/s],
  ['tempo 0', GOOD.replace('= 92', '= 0'), /expected/],
  ['tempo −5', GOOD.replace('= 92', '= -5'), /expected/],
  ['tempo 9999', GOOD.replace('= 92', '= 9999'), /expected/],
  ['tempo "fast"', GOOD.replace('half = 92', 'fast'), /expected/],
  ['binary pasted in', `\u0000\u0001PK\u0003\u0004\ufffd\ufffd${'\u0007'.repeat(50)}\n`, /expected/],
];

test('A faulty chart says what was expected, and stays as typed, whatever the fault', async ({ page }) => {
  test.setTimeout(90_000);
  const seen = witness(page);
  await openChart(page);
  for (const [what, text, words] of FAULTY) {
    await test.step(what, async () => {
      await editor(page).fill(GOOD);
      await expect(page.getByText('No faults')).toBeVisible();
      await editor(page).fill(text);
      await expect(faults(page).getByRole('listitem').first(), what).toBeVisible();
      await expect(faults(page), what).toHaveText(words);
      await expect(editor(page), what).toHaveValue(text);
      // The last good music is still there to be played.
      await expect(page.getByRole('button', { name: 'Play', exact: true }), what).toBeEnabled();
    });
  }
  expectClean(seen);
});

test('A faulty chart survives a reload exactly as typed, and so does an empty one', async ({ page }) => {
  const seen = witness(page);
  await openChart(page);
  for (const text of [`${HEAD}| Em7 | Qx7  ; why not?\n`, '']) {
    await editor(page).fill(text);
    await expect(faults(page).getByRole('listitem').first()).toBeVisible();
    await expect(page.getByText('Kept on this device.')).toBeVisible();
    await page.reload();
    await expect(editor(page)).toHaveValue(text);
  }
  expectClean(seen);
});

test('Two thousand bars are read, drawn and played without a fault', async ({ page }) => {
  const seen = witness(page);
  await openChart(page);
  const text = HEAD + '| Em7 | A7 | D6 | B7b9 |\n'.repeat(500);
  await editor(page).fill(text);
  await expect(page.getByText('No faults')).toBeVisible();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Stop', exact: true })).toBeVisible();
  await page.getByRole('link', { name: 'Practise' }).click();
  await expect(page.locator('.now-card .panel[data-now]')).toHaveCount(1, { timeout: 15_000 });
  await expect(editor(page)).toHaveCount(0);
  await page.getByRole('link', { name: 'Chart' }).click();
  await expect(editor(page)).toHaveValue(text);
  expectClean(seen);
});

test('A title with a script in it is shown as text and never run', async ({ page }) => {
  const seen = witness(page);
  await openChart(page);
  const title = '<script>window.ran = true</script><img src=x onerror="window.ran = true">';
  await editor(page).fill(GOOD.replace('Night Boat', title));
  await expect(page.getByText('No faults')).toBeVisible();
  for (const place of ['Practise', 'Sheet', 'Chart']) {
    await page.getByRole('link', { name: place }).click();
    if (place !== 'Chart') await expect(page.getByRole('main')).toContainText('<script>window.ran = true</script>');
    expect(await page.evaluate(() => 'ran' in window)).toBe(false);
  }
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'MIDI file' }).click();
  expect((await download).suggestedFilename()).not.toMatch(/[<>"/\\:|?*=]/);
  expectClean(seen);
});

test('A device that refuses to keep anything says so, and the page goes on working', async ({ page }) => {
  const seen = witness(page);
  await page.addInitScript(() => {
    const refuse = () => {
      throw new DOMException('storage is switched off', 'SecurityError');
    };
    Object.defineProperty(window, 'indexedDB', { get: refuse });
    Object.defineProperty(window, 'localStorage', { get: refuse });
  });
  await openChart(page);
  await editor(page).fill(GOOD);
  await expect(page.getByText(/Not kept on this device/)).toBeVisible();
  await expect(editor(page)).toHaveValue(GOOD);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Stop', exact: true })).toBeVisible();
  expectClean(seen);
});

test('A device that is full says so, and the text stays', async ({ page }) => {
  const seen = witness(page);
  await page.addInitScript(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('no room left', 'QuotaExceededError');
    };
  });
  await openChart(page);
  await editor(page).fill(GOOD);
  await expect(page.getByText(/Not kept on this device/)).toBeVisible();
  await expect(editor(page)).toHaveValue(GOOD);
  expectClean(seen);
});

test('Sound that may not start says so in one sentence, and sounds once it may', async ({ page }) => {
  const seen = witness(page);
  await growEars(page);
  await page.addInitScript(() => {
    const resume = AudioContext.prototype.resume;
    const state = Object.getOwnPropertyDescriptor(BaseAudioContext.prototype, 'state')?.get;
    const refused = () => !('soundAllowed' in window);
    AudioContext.prototype.resume = function (this: AudioContext) {
      return refused() ? Promise.reject(new DOMException('no sound allowed here', 'NotAllowedError')) : resume.call(this);
    };
    Object.defineProperty(BaseAudioContext.prototype, 'state', {
      get(this: BaseAudioContext) {
        return refused() ? 'suspended' : state?.call(this);
      },
    });
  });
  await page.goto('./');
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.getByRole('alert')).toContainText('The sound could not start', { timeout: 15_000 });
  await page.evaluate(() => Object.assign(window, { soundAllowed: true }));
  // Whatever the big button says now, it leads back to Play, and Play sounds.
  const stop = page.getByRole('button', { name: 'Stop', exact: true });
  if (await stop.isVisible()) await stop.click();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect.poll(() => loudness(page), { intervals: [20], timeout: 5_000 }).toBeGreaterThan(0.001);
  await expect(page.getByRole('alert')).toHaveCount(0);
  expectClean(seen);
});

test('The same chart in two tabs: neither loses what was typed, and the other tab is told', async ({ context }) => {
  const first = await context.newPage();
  const second = await context.newPage();
  const seen = [witness(first), witness(second)];
  await openChart(first);
  await editor(first).fill(GOOD);
  await first.waitForTimeout(600);
  await openChart(second);
  await expect(editor(second)).toHaveValue(GOOD);
  const changed = GOOD.replace('B7b9', 'Bm7');
  await editor(second).fill(changed);
  await second.waitForTimeout(600);
  await first.getByRole('link', { name: 'Practise' }).click();
  await expect(first.getByText(/changed in another tab/)).toBeVisible();
  await first.getByRole('link', { name: 'Chart' }).click();
  await expect(editor(first)).toHaveValue(GOOD);
  await expect(editor(second)).toHaveValue(changed);
  for (const each of seen) expectClean(each);
});

test('A tempo typed by hand that cannot be played stays in its field with one sentence', async ({ page }) => {
  const seen = witness(page);
  await page.goto('./');
  await page.getByRole('button', { name: 'More' }).click();
  const field = page.getByRole('textbox', { name: 'half notes' });
  for (const typed of ['0', '-5', '9999', 'fast', '']) {
    await field.fill(typed);
    await field.press('Enter');
    await expect(page.getByText('A tempo is a number from 25 to 140 half notes a minute.')).toBeVisible();
    await expect(field).toHaveValue(typed);
  }
  await field.fill('140');
  await field.press('Enter');
  await expect(page.getByText('A tempo is a number from 25 to 140 half notes a minute.')).toHaveCount(0);
  expectClean(seen);
});
