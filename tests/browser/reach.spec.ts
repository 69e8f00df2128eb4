/** Who can use the page and on what: automated accessibility rules, small screens, and a page that does nothing per frame. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, type Page, test } from '@playwright/test';
import { commitsDuring, countCommits, expectClean, witness } from './witness';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly impact: string;
    readonly help: string;
    readonly nodes: readonly { readonly target: readonly string[] }[];
  }[];
}

/** Violations of WCAG 2.2 A and AA that axe-core can see, one line each. */
async function violations(page: Page): Promise<string[]> {
  // Evaluated, not added as a script: the page's content security policy stays as it is.
  await page.evaluate(AXE);
  const result = (await page.evaluate(() => {
    const axe = (window as unknown as { axe: { run: (context: Document, options: object) => Promise<unknown> } }).axe;
    return axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] });
  })) as AxeResult;
  return result.violations.map(
    ({ id, impact, help, nodes }) => `${id} (${impact}): ${help} – ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
  );
}

const PLACES = ['Practise', 'Chart', 'Sheet'] as const;

for (const theme of ['light', 'dark'] as const) {
  test(`Every place passes the automated accessibility rules in the ${theme} theme, with everything opened`, async ({ page }) => {
    const seen = witness(page);
    await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' });
    await page.goto('./');
    const found: string[] = [];
    const look = async (where: string) => found.push(...(await violations(page)).map((words) => `${where}: ${words}`));
    for (const place of PLACES) {
      await page.getByRole('link', { name: place }).click();
      await expect(page.getByRole('link', { name: place })).toHaveAttribute('aria-current', 'page');
      await page.waitForTimeout(500);
      await look(place);
    }
    await page.getByRole('link', { name: 'Practise' }).click();
    await page.getByRole('button', { name: 'More' }).click();
    await look('More');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Balance' }).click();
    await look('Balance');
    expect(found).toEqual([]);
    expectClean(seen);
  });
}

for (const [width, height] of [
  [360, 740],
  [740, 360],
  [768, 1024],
  [1440, 900],
] as const) {
  test(`At ${width} by ${height} nothing is wider than the screen, and Play is in reach`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await page.goto('./');
    for (const place of PLACES) {
      await page.getByRole('link', { name: place }).click();
      await page.waitForTimeout(300);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth), place).toBeLessThanOrEqual(0);
      const box = await page.getByRole('button', { name: 'Play', exact: true }).boundingBox();
      expect(box, place).not.toBeNull();
      if (!box) continue;
      expect(Math.min(box.width, box.height), `${place}: a target of 56 px`).toBeGreaterThanOrEqual(56);
      expect(box.y + box.height, `${place}: above the lower edge`).toBeLessThanOrEqual(height);
    }
  });
}

test('While it plays React commits nothing from frame to frame', async ({ page }) => {
  const seen = witness(page);
  await countCommits(page);
  await page.goto('./');
  // At the slowest tempo a cycle lasts 9.6 s: the measured span lies inside one, where no other card is due.
  await page.getByRole('button', { name: 'More' }).click();
  const field = page.getByRole('textbox', { name: 'half notes' });
  await field.fill('25');
  await field.press('Enter');
  await page.getByRole('button', { name: 'Less', exact: true }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.locator('.now-card .panel[data-now]')).toHaveCount(1, { timeout: 20_000 });
  await page.waitForTimeout(1_000);
  const place = () => page.evaluate(() => document.querySelector<HTMLElement>('.panel[data-now] .now-line')?.style.transform);
  const from = await place();
  const { before, commits, frames } = await commitsDuring(page, 4_000);
  expect(before, 'the counter counts: the page was drawn at least once').toBeGreaterThan(0);
  expect(frames, 'frames were drawn').toBeGreaterThan(60);
  expect(await place(), 'the playhead moved').not.toBe(from);
  expect(commits).toBe(0);
  expectClean(seen);
});
