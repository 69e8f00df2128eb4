/** Who can use the page and on what: automated accessibility rules, small screens, and a page that does nothing per frame. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, type Page, test } from '@playwright/test';
import { commitsDuring, countCommits, expectClean, withoutCountIn, witness } from './witness';

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

const PLACES = ['Practise', 'Chart', 'Sheet', 'Journal'] as const;

/** Widths of a laptop or tablet on the stand, a tablet held upright, and a phone. */
const SIZES = [
  { width: 1280, height: 800 },
  { width: 768, height: 1024 },
  { width: 390, height: 844 },
] as const;

for (const theme of ['light', 'dark'] as const) {
  for (const size of SIZES) {
    test(`Every place passes the automated accessibility rules in the ${theme} theme at ${size.width} px`, async ({ page }) => {
      const seen = witness(page);
      await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' });
      await page.setViewportSize(size);
      await page.goto('./');
      const found: string[] = [];
      for (const place of PLACES) {
        await page.getByRole('link', { name: place }).click();
        await expect(page.getByRole('link', { name: place })).toHaveAttribute('aria-current', 'page');
        await expect(page.getByRole('heading', { level: 1 })).toBeAttached();
        found.push(...(await violations(page)).map((words) => `${place}: ${words}`));
      }
      expect(found).toEqual([]);
      expectClean(seen);
    });
  }

  test(`Everything that opens passes the automated accessibility rules in the ${theme} theme`, async ({ page }) => {
    const seen = witness(page);
    await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' });
    await page.goto('./');
    const found: string[] = [];
    const look = async (where: string) => found.push(...(await violations(page)).map((words) => `${where}: ${words}`));
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByLabel(/As text/).fill('x.xx.x.x .x.xx.x.');
    await look('More');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Words', exact: true }).click();
    await page.getByRole('dialog', { name: 'Words' }).getByRole('button', { name: 'clave', exact: true }).click();
    await look('Words');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Balance' }).click();
    await expect(page.getByRole('region', { name: 'Balance' })).toBeVisible();
    await look('Balance');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: /^View/ }).click();
    await expect(page.getByRole('region', { name: 'View' }).first()).toBeVisible();
    await look('View');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: /half notes · goal/ }).click();
    await expect(page.getByRole('button', { name: 'Higher goal' })).toBeVisible();
    await look('the tempo and its goal');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Play along' }).click();
    await look('the ways to play along');
    await page.getByRole('button', { name: 'Taps on this screen' }).click();
    await expect(page.getByRole('button', { name: 'Tap here' })).toBeVisible();
    await look('the field to tap');
    await page.getByRole('region', { name: 'Play along' }).getByRole('button', { name: 'Close' }).click();
    await page.getByRole('gridcell', { name: /^bar 1, 2-side, beat 1,/ }).press('Enter');
    await expect(page.getByRole('region', { name: 'Change this stroke' })).toBeVisible();
    await page.keyboard.press('?');
    await expect(page.getByRole('dialog')).toBeVisible();
    await look('the editor of strokes and the list of keys');
    expect(found).toEqual([]);
    expectClean(seen);
  });
}

test('At 200 % zoom (a window of 640 by 400 CSS pixels) nothing is cut off sideways and every control is reached', async ({ page }) => {
  await page.setViewportSize({ width: 640, height: 400 });
  await page.goto('./');
  for (const place of PLACES) {
    await page.getByRole('link', { name: place }).click();
    await expect(page.getByRole('heading', { level: 1 })).toBeAttached();
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth), place).toBeLessThanOrEqual(0);
  }
  await page.getByRole('link', { name: 'Practise' }).click();
  await page.getByRole('button', { name: 'More', exact: true }).click();
  const last = page.getByRole('region', { name: 'More settings' }).getByRole('button', { name: 'Full screen' });
  await last.scrollIntoViewIfNeeded();
  await expect(last).toBeInViewport();
});

test('In the colours of the system every pressed button still stands out, and the moment that sounds too', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  await page.goto('./');
  const ground = (selector: string) =>
    page
      .locator(selector)
      .first()
      .evaluate((element) => getComputedStyle(element).backgroundColor);
  expect(await ground('.key[aria-pressed="true"]')).not.toBe(await ground('.key-more'));
  expect(await ground('.play')).not.toBe(await ground('.transport-bar'));
  expect(await ground('.now-column')).not.toBe(await ground('.practise .card'));
});

test('With the hand strip, the whole next card and the transport on a window of 1280 by 800 nothing is scrolled', async ({ page }) => {
  await page.goto('./');
  const edge = async (selector: string) => {
    const box = await page.locator(selector).boundingBox();
    return box ? box.y + box.height : Number.POSITIVE_INFINITY;
  };
  await expect(page.locator('.hand-strip svg')).toBeVisible();
  const transport = (await page.locator('.transport').boundingBox())?.y ?? 0;
  expect(await edge('.next-card')).toBeLessThan(transport);
  expect(await edge('.hand-strip')).toBeLessThanOrEqual(transport + 1);
});

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
  await withoutCountIn(page);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.locator('.now-card .panel[data-now]')).toHaveCount(1, { timeout: 20_000 });
  await page.waitForTimeout(1_000);
  const place = () => page.evaluate(() => document.querySelector<HTMLElement>('.panel[data-now] .now-line')?.style.transform);
  const from = await place();
  const { before, commits, frames } = await commitsDuring(page, 4_000);
  expect(before, 'the counter counts: the page was drawn at least once').toBeGreaterThan(0);
  expect(frames, 'frames were drawn').toBeGreaterThan(10);
  expect(await place(), 'the playhead moved').not.toBe(from);
  expect(commits).toBe(0);
  expectClean(seen);
});
