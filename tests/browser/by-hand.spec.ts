/**
 * What people do without a mouse, with a small window, and with letters set wide: WCAG 2.2, success criteria 1.4.10 (reflow, 320 CSS px), 1.4.12 (text
 * spacing), 2.1.1 and 2.1.2 (keyboard, no trap), 2.4.3 (focus order: what closes gives the focus back), 2.4.7 and 2.4.11 (focus visible, not obscured).
 */
import { expect, type Page, test } from '@playwright/test';

const PLACES = ['practise', 'chart', 'sheet', 'drills', 'journal'] as const;
type Place = (typeof PLACES)[number];

async function open(page: Page, place: Place) {
  await page.goto(`./#/${place}`);
  await expect(page.locator('.places [aria-current="page"]')).toBeVisible();
  await expect(page.getByRole('heading', { level: 1 })).toBeAttached();
  // What is fetched after the first drawing has come.
  await page.waitForLoadState('networkidle');
}

/** Controls that stick out of the window and lie in nothing that scrolls sideways. */
const stickingOut = (page: Page) =>
  page.evaluate(() => {
    const scrolls = (element: Element | null): boolean =>
      element !== null &&
      element !== document.body &&
      (/auto|scroll/.test(getComputedStyle(element).overflowX) || scrolls(element.parentElement));
    return [...document.querySelectorAll('a, button, input, select, textarea, summary, h1, h2, h3, p, label')]
      .filter(
        (element) => element.checkVisibility() && !element.closest('.visually-hidden, .spoken-only') && !scrolls(element.parentElement),
      )
      .map((element) => ({
        box: element.getBoundingClientRect(),
        name: `${element.tagName} ${element.className} ${element.textContent?.slice(0, 30)}`,
      }))
      .filter(({ box }) => box.width > 0 && (box.right > window.innerWidth + 1 || box.left < -1))
      .map(({ name, box }) => `${name} ${Math.round(box.left)}–${Math.round(box.right)}`);
  });
const sideways = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

for (const locale of ['en-GB', 'es-CU'] as const) {
  test.describe(`In ${locale}`, () => {
    test.use({ locale, viewport: { width: 320, height: 640 } });
    test('a window of 320 px shows every place without scrolling sideways', async ({ page }) => {
      for (const place of PLACES) {
        await open(page, place);
        expect(await sideways(page), place).toBeLessThanOrEqual(0);
        expect(await stickingOut(page), place).toEqual([]);
      }
    });
  });
}

/** Words that are cut off by their own box. */
const cutOff = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, a, p, label, h1, h2, h3, legend, li, td, th, summary')]
      .filter((element) => element.checkVisibility() && !element.closest('.visually-hidden, .spoken-only, [data-sheet-page]'))
      .filter((element) => /hidden|clip/.test(getComputedStyle(element).overflow) || element.tagName === 'BUTTON')
      .filter((element) => element.scrollWidth > element.clientWidth + 2 || element.scrollHeight > element.clientHeight + 2)
      .map((element) => `${element.tagName} ${element.className}: ${element.textContent?.slice(0, 40)}`),
  );

for (const width of [1280, 390] as const) {
  test(`With letters, words and lines set as wide as people may ask, nothing is cut off at ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height: 844 });
    for (const place of PLACES) {
      await open(page, place);
      // A sheet that the page's policy lets stand: the values are those of success criterion 1.4.12.
      await page.evaluate(() => {
        const spaced = new CSSStyleSheet();
        spaced.replaceSync(
          '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }',
        );
        document.adoptedStyleSheets = [spaced];
        window.dispatchEvent(new Event('resize'));
      });
      await page.waitForTimeout(200);
      expect(await sideways(page), place).toBeLessThanOrEqual(0);
      expect(await cutOff(page), place).toEqual([]);
    }
  });
}

/** Where the focus is: what it is, whether it can be seen, and whether something fixed lies over all of it. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (!element || element === document.body) return null;
    const box = element.getBoundingClientRect();
    const style = getComputedStyle(element);
    const frame = element.closest('.editor-desk');
    const framed = frame !== null && getComputedStyle(frame).outlineStyle !== 'none';
    const ring = framed || (style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) > 0) || style.boxShadow !== 'none';
    const points = [0.1, 0.5, 0.9].flatMap((x) =>
      [0.1, 0.5, 0.9].map((y) => [box.left + box.width * x, box.top + box.height * y] as const),
    );
    const bare = points.some(([x, y]) => {
      const top = document.elementFromPoint(x, y);
      return top !== null && (element.contains(top) || top.contains(element));
    });
    const all = [...document.querySelectorAll('*')];
    return {
      key: all.indexOf(element),
      name: `${element.tagName} ${element.getAttribute('class') ?? ''} ${element.getAttribute('aria-label') ?? element.textContent?.slice(0, 30)}`,
      ring,
      bare,
    };
  });

for (const [place, size] of [
  ...PLACES.map((each) => [each, { width: 1280, height: 800 }] as const),
  ['practise', { width: 390, height: 844 }] as const,
  ['chart', { width: 390, height: 844 }] as const,
]) {
  test(`By Tab alone the whole of ${place} is walked at ${size.width} px, and the focus is always seen`, async ({ page }) => {
    await page.setViewportSize(size);
    await open(page, place);
    const wanted = await page.evaluate(
      () =>
        [...document.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary, [tabindex="0"]')].filter(
          (element) =>
            element.checkVisibility() &&
            element.tabIndex >= 0 &&
            !(element as HTMLButtonElement).disabled &&
            element.getAttribute('type') !== 'radio' &&
            element.closest('[inert]') === null,
        ).length,
    );
    const seen = new Map<number, string>();
    const faults: string[] = [];
    for (let press = 0; press < wanted * 2 + 20; press += 1) {
      await page.keyboard.press('Tab');
      const here = await focused(page);
      if (here === null || (seen.has(here.key) && seen.keys().next().value === here.key)) break;
      if (!seen.has(here.key)) {
        if (!here.ring) faults.push(`no ring: ${here.name}`);
        if (!here.bare) faults.push(`covered: ${here.name}`);
      } else faults.push(`trapped at ${here.name}`);
      seen.set(here.key, here.name);
      if (faults.some((fault) => fault.startsWith('trapped'))) break;
    }
    expect(faults).toEqual([]);
    expect(seen.size, [...seen.values()].join('\n')).toBeGreaterThanOrEqual(wanted);
  });
}

test('What is opened by key closes on Escape and gives the focus back to where it was', async ({ page }) => {
  await open(page, 'practise');
  const lost: string[] = [];
  const trip = async (name: string, opener: () => ReturnType<Page['locator']>, inside: () => ReturnType<Page['locator']>) => {
    await opener().focus();
    await page.keyboard.press('Enter');
    await expect(inside(), name).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(inside(), name).toBeHidden();
    const back = await opener().evaluate((element) => element === document.activeElement);
    if (!back) lost.push(`${name}: ${(await focused(page))?.name ?? 'nowhere'}`);
  };
  const button = (name: string | RegExp) => () => page.getByRole('button', { name, exact: typeof name === 'string' }).first();
  await trip('Words', button('Words'), () => page.getByRole('dialog', { name: 'Words' }));
  await trip('Balance', button('Balance'), () => page.getByRole('region', { name: 'Balance' }));
  await trip('View', button(/^View/), () => page.getByRole('region', { name: 'View' }).first());
  await trip('the tempo', button(/half notes · goal/), () => page.getByRole('button', { name: 'Higher goal' }));
  await trip(
    'More',
    () => page.locator('.key-more'),
    () => page.getByRole('region', { name: 'More settings' }),
  );
  await trip('Play along', button('Play along'), () => page.getByRole('region', { name: 'Play along' }));
  const cell = () => page.getByRole('gridcell', { name: /^bar 1, 2-side, beat 1,/ });
  await trip('the editor of strokes', cell, () => page.getByRole('region', { name: 'Change this stroke' }));
  await cell().focus();
  await page.keyboard.press('?');
  await expect(page.getByRole('dialog')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  if (!(await cell().evaluate((element) => element === document.activeElement)))
    lost.push(`keys: ${(await focused(page))?.name ?? 'nowhere'}`);
  expect(lost).toEqual([]);
});
