/** The player's own charts in a real browser: the editor, the shelf, set lists, files in, and one file that holds everything. */
import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { expectClean, witness } from './witness';

const editor = (page: Page) => page.getByRole('textbox', { name: 'Chart text' });
const ownCharts = (page: Page) => page.getByRole('region', { name: 'Your charts' });
const safety = (page: Page) => page.getByRole('region', { name: 'Safe keeping' });
const kept = (page: Page) => expect(page.getByText('Kept on this device.')).toBeVisible();
const LOW = 'title: Low Tide\nkey: D\nclave: 2-3 son\ntempo: half = 92\n\n[A]\n| Em7 | A7 | D6 | B7b9 |\n';

async function openChart(page: Page) {
  await page.goto('./#/chart');
  await expect(ownCharts(page)).toBeVisible();
}

test('A chart is typed with suggestions, mended with one press, and every change can be taken back, chart by chart', async ({ page }) => {
  const seen = witness(page);
  await openChart(page);
  await expect(page.getByRole('region', { name: 'Demo book' }).getByRole('listitem')).toHaveCount(6);
  await editor(page).fill(LOW);
  await editor(page).press('Control+End');
  await editor(page).pressSequentially('| Em');
  await page.getByRole('toolbar', { name: 'At the caret' }).getByRole('button', { name: 'Write Em7', exact: true }).click();
  await expect(editor(page)).toBeFocused();
  await editor(page).pressSequentially(' ');
  await page.getByRole('button', { name: '| barline' }).click();
  await editor(page).pressSequentially('H7 |');
  await expect(editor(page)).toHaveValue(`${LOW}| Em7 | H7 |`);
  await expect(page.locator('.ink-fault')).toHaveText('H7');
  await page.getByRole('toolbar', { name: 'At the caret' }).getByRole('button', { name: 'Write B7' }).click();
  await expect(editor(page)).toHaveValue(`${LOW}| Em7 | B7 |`);
  await expect(page.getByText('No faults')).toBeVisible();
  // Another chart in between; the history of this one goes on where it was.
  await page.getByRole('button', { name: /^The Night Pilot/ }).click();
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  await page.getByRole('button', { name: /^Low Tide/ }).click();
  await expect(editor(page)).toHaveValue(`${LOW}| Em7 | B7 |`);
  await editor(page).press('Control+z');
  await expect(editor(page)).toHaveValue(`${LOW}| Em7 | H7 |`);
  for (let step = 0; step < 40 && (await page.getByRole('button', { name: 'Undo' }).isEnabled()); step += 1)
    await editor(page).press('Control+z');
  await expect(editor(page)).toHaveValue(/^title: Last Ferry/);
  expectClean(seen);
});

test('The inks lie exactly under the letters that are typed', async ({ page }) => {
  await openChart(page);
  await editor(page).fill(`${LOW}; B♭ and F♯ stand where they are typed\n| B♭m7 | F♯m7b5 |\n`);
  const widths = await page.evaluate(() => {
    const area = document.querySelector<HTMLTextAreaElement>('.editor-text');
    const lines = [...document.querySelectorAll<HTMLElement>('.ink-line')];
    const widest = Math.max(...lines.map((line) => line.getBoundingClientRect().width));
    const probe = document.createElement('textarea');
    probe.className = 'editor-text';
    probe.wrap = 'off';
    probe.rows = 1;
    probe.style.cssText = 'position:absolute;width:1px;min-height:0;padding:0';
    probe.value = lines.map((line) => line.textContent).sort((a, b) => (b?.length ?? 0) - (a?.length ?? 0))[0] ?? '';
    document.querySelector('.editor-desk')?.append(probe);
    const typed = probe.scrollWidth;
    probe.remove();
    return {
      widest,
      typed,
      tops: lines.slice(0, 3).map((line) => line.offsetTop),
      lineHeight: area ? getComputedStyle(area).lineHeight : '',
    };
  });
  expect(Math.abs(widths.widest - widths.typed)).toBeLessThanOrEqual(1.5);
  expect(widths.tops).toEqual([0, 26, 52]);
  expect(widths.lineHeight).toBe('26px');
});

test('Charts are found, copied, renamed, put into a set list, taken away and brought back', async ({ page }) => {
  const seen = witness(page);
  await openChart(page);
  await editor(page).fill(LOW);
  await kept(page);
  await page.getByRole('button', { name: 'More for Low Tide' }).click();
  await page.getByRole('button', { name: 'Duplicate' }).click();
  await expect(editor(page)).toHaveValue(/^title: Low Tide \(copy\)/);
  await page.getByRole('button', { name: 'More for Low Tide (copy)' }).click();
  await page.getByRole('button', { name: 'Rename' }).click();
  await page.getByRole('textbox', { name: 'New title' }).fill('Slack Water');
  await page.getByRole('button', { name: 'Keep the title' }).click();
  await expect(editor(page)).toHaveValue(/^title: Slack Water\n/);
  await page.getByRole('searchbox', { name: 'Search titles and chords' }).fill('slack');
  await expect(ownCharts(page).getByRole('button', { name: /changed/ })).toHaveCount(1);
  await page.getByRole('searchbox', { name: 'Search titles and chords' }).fill('');

  await page.getByRole('button', { name: 'New set list' }).click();
  await page.getByText('no date yet').click();
  await page.getByRole('textbox', { name: 'Name' }).fill('Quay Street, Saturday');
  await page.getByLabel('Date').fill('2026-11-28');
  await page.getByRole('button', { name: 'Add “Slack Water”' }).click();
  await ownCharts(page)
    .getByRole('button', { name: /^Low Tide/ })
    .click();
  await page.getByRole('button', { name: 'Add “Low Tide”' }).click();
  await page.getByRole('button', { name: 'Low Tide earlier' }).click();
  await expect(page.locator('.set-chart')).toHaveText(['1. Low Tide', '2. Slack Water']);

  await page.getByRole('button', { name: 'More for Low Tide' }).click();
  await page.getByRole('button', { name: 'Take away' }).click();
  await expect(ownCharts(page).getByRole('button', { name: /^Low Tide/ })).toHaveCount(0);
  await page.getByRole('button', { name: 'Bring it back' }).first().click();
  await expect(ownCharts(page).getByRole('button', { name: /^Low Tide/ })).toHaveCount(1);
  await kept(page);
  await page.reload();
  await expect(page.getByText('Quay Street, Saturday')).toBeVisible();
  await expect(ownCharts(page).getByRole('button', { name: /changed/ })).toHaveCount(2);
  expectClean(seen);
});

test('One file holds everything: saved, everything deleted, shown before it happens, brought back', async ({ page }) => {
  const seen = witness(page);
  await openChart(page);
  await editor(page).fill(LOW);
  await kept(page);
  const download = page.waitForEvent('download');
  await safety(page).getByRole('button', { name: 'Save a backup' }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toMatch(/^contratiempo-backup-\d{4}-\d\d-\d\d\.json$/);
  const file = { name: saved.suggestedFilename(), mimeType: 'application/json', buffer: readFileSync(await saved.path()) };

  await safety(page).getByRole('button', { name: 'Delete everything…' }).click();
  await expect(safety(page).getByRole('alert')).toContainText('1 chart');
  await safety(page).getByRole('button', { name: 'Delete everything now' }).click();
  await expect(editor(page)).toHaveValue(/^title: Last Ferry/);
  await expect(ownCharts(page).getByRole('button', { name: /changed/ })).toHaveCount(0);

  await page.locator('input[type=file]').setInputFiles(file);
  await expect(safety(page)).toContainText('1 chart that is not here');
  await expect(ownCharts(page).getByRole('button', { name: /^Low Tide/ })).toHaveCount(0);
  await safety(page).getByRole('button', { name: 'Bring it in' }).click();
  await ownCharts(page)
    .getByRole('button', { name: /^Low Tide/ })
    .click();
  await expect(editor(page)).toHaveValue(LOW);

  await page.locator('input[type=file]').setInputFiles({ ...file, buffer: file.buffer.subarray(0, 60) });
  await expect(safety(page)).toContainText('expected a backup file of this page');
  expectClean(seen);
});

test('A shelf that cannot be read is put aside and can be saved, and its charts come back from their own records', async ({ page }) => {
  const seen = witness(page);
  await openChart(page);
  await editor(page).fill(LOW);
  await kept(page);
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('contratiempo');
        opening.onsuccess = () => {
          const put = opening.result.transaction('records', 'readwrite').objectStore('records').put('{"record":"sh', 'shelf');
          put.onsuccess = () => resolve();
          put.onerror = () => reject(put.error);
        };
      }),
  );
  await page.goto('about:blank');
  await openChart(page);
  await expect(page.getByText('One saved record could not be read.')).toBeVisible();
  await expect(ownCharts(page).getByRole('button', { name: /^Low Tide/ })).toBeVisible();
  const download = page.waitForEvent('download');
  await page.getByRole('region', { name: 'Put aside' }).getByRole('button', { name: 'Save as a file' }).click();
  expect(readFileSync(await (await download).path(), 'utf8')).toBe('{"record":"sh');
  expectClean(seen);
});
