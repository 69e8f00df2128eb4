/** Recordings that are refused, broken or slow: music sounds all the same, and soon. */
import { expect, test } from '@playwright/test';
import { expectClean, growEars, loudness, witness } from './witness';

test.describe('Samples that do not come', () => {
  const answers = {
    'a 404': { status: 404, contentType: 'text/plain', body: 'not here' },
    'a page of HTML': { status: 200, contentType: 'text/html', body: '<!doctype html><title>start page</title>' },
    'bytes that are no sound': { status: 200, contentType: 'audio/mpeg', body: 'this is no sound at all' },
  };
  for (const [what, answer] of Object.entries(answers)) {
    test(`but ${what} instead: the synthesised fallback sounds within two seconds, and nothing is thrown`, async ({ page }) => {
      const seen = witness(page, [/Failed to load resource: the server responded with a status of 404/]);
      await growEars(page);
      await page.route('**/samples/**', (route) => route.fulfill(answer));
      await page.goto('./');
      await page.getByRole('button', { name: 'Play', exact: true }).click();
      await expect.poll(() => loudness(page), { intervals: [20], timeout: 2_000 }).toBeGreaterThan(0.001);
      await expect(page.locator('.now-card .panel[data-now]')).toHaveCount(1, { timeout: 15_000 });
      expectClean(seen);
    });
  }

  test('for a long while: Play does not wait for them', async ({ page }) => {
    const seen = witness(page);
    await growEars(page);
    await page.route('**/samples/**', () => undefined);
    await page.goto('./');
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect.poll(() => loudness(page), { intervals: [20], timeout: 2_000 }).toBeGreaterThan(0.001);
    expectClean(seen);
    await page.unrouteAll({ behavior: 'ignoreErrors' });
  });
});
