/** The Journal place in a real browser: a set's moves are counted, ticked off and looped. */
import { expect, test } from '@playwright/test';
import { expectClean, witness } from './witness';

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
