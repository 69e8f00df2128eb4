/** The Journal place in a real browser: a pass rated by ear is written down, kept, taken out and brought back; a set's moves are counted and looped. */
import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { expectClean, witness } from './witness';

test('A rated pass is in the journal, stays after a reload, is saved as a table, taken out and brought back', async ({ page }) => {
  const seen = witness(page);
  await page.goto('./#/journal');
  await expect(page.getByText('Nothing here yet.')).toBeVisible();
  await page.getByRole('link', { name: 'Go and play' }).click();
  await page.getByRole('button', { name: 'Play along' }).click();
  await page.getByRole('button', { name: 'I rate myself' }).click();
  await page.getByRole('group', { name: 'How was that pass?' }).getByRole('button', { name: 'Clean' }).click();
  await page.getByRole('link', { name: 'Journal' }).click();
  const lately = page.getByRole('region', { name: 'Played lately' });
  await expect(lately).toContainText('1 of 1 pass clean');
  await page.reload();
  await expect(lately).toContainText('Last Ferry');
  const download = page.waitForEvent('download');
  await lately.getByRole('button', { name: 'Save as a table (CSV)' }).click();
  expect(readFileSync(await (await download).path(), 'utf8')).toContain(',pass,Last Ferry,');
  await lately.getByRole('button', { name: /^Take out: Last Ferry/ }).click();
  await expect(page.getByText('Nothing here yet.')).toBeVisible();
  await page.getByRole('button', { name: 'Bring back' }).click();
  await expect(lately).toContainText('Last Ferry');
  expectClean(seen);
});

test('The moves of a set with a date are counted, ticked off for good and looped with one touch', async ({ page }) => {
  const seen = witness(page);
  await page.goto('./#/chart');
  await page.getByRole('button', { name: 'New set list' }).click();
  await page.locator('.set-list summary').click();
  await page.getByRole('button', { name: /^Add “Last Ferry/ }).click();
  await page.locator('.set-list input[type=date]').fill('2199-11-28');
  await page.getByRole('link', { name: 'Journal' }).click();
  await page.getByRole('button', { name: 'Count the moves of Set' }).click();
  const evening = page.getByRole('region', { name: 'What deserves the evening' });
  await expect(evening).toContainText(/\d+ bars use \d+ moves of the hand; you have 0/);
  // Ticked off, the move leaves the list: a click, because `check` would look for the tick where another move now stands.
  await evening.getByRole('checkbox').first().click();
  await expect(evening).toContainText('you have 1;');
  await evening
    .getByRole('button', { name: /^Loop / })
    .first()
    .click();
  await expect(page.getByRole('link', { name: 'Practise' })).toHaveAttribute('aria-current', 'page');
  await expect(page.getByRole('group', { name: 'Loop' })).toContainText(/Loop \d+–\d+/);
  await page.getByRole('link', { name: 'Journal' }).click();
  await expect(evening).toContainText('you have 1;');
  expectClean(seen);
});
