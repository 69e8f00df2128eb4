import { expect, test } from '@playwright/test';

test('a drill runs on the board by the player’s own ear, and the desk comes back', async ({ page }) => {
  await page.goto('./#/drills');
  await page.getByRole('listitem').filter({ hasText: 'Tempo ladder' }).getByRole('button', { name: 'Begin' }).click();
  const bar = page.getByRole('region', { name: 'Drill' });
  await expect(bar.getByRole('status')).toContainText('Press Play.');
  await page.getByRole('button', { name: 'Play', exact: true }).first().click();
  for (let pass = 0; pass < 3; pass += 1) await bar.getByRole('button', { name: 'Clean' }).click();
  await expect(bar.getByRole('status')).toContainText('3 of 3 clean');
  await bar.getByRole('button', { name: 'End the drill' }).click();
  await expect(bar).toHaveCount(0);
});

test('which side? is asked by sound alone and answered', async ({ page }) => {
  await page.goto('./#/drills');
  await page.getByRole('listitem').filter({ hasText: 'Which side?' }).getByRole('button', { name: 'Begin' }).click();
  await expect(page.getByRole('button', { name: 'It begins on the 2-side' })).toBeDisabled();
  await page.getByRole('button', { name: 'Hear it' }).click();
  await page.getByRole('button', { name: 'It begins on the 2-side' }).click();
  await expect(page.getByText(/[01] of 1 right/)).toBeVisible();
});
