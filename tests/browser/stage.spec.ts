/** The Practise place under fingers: nothing covers the next cycle, whatever stands beside the board, and every target is as large as a finger. */
import { expect, type Page, test } from '@playwright/test';
import { expectClean, witness } from './witness';

const PHONES = [
  { width: 360, height: 740 },
  { width: 390, height: 844 },
  { width: 844, height: 390 },
] as const;

/** A finger's target in CSS px: Target Size (Enhanced), WCAG 2.2, success criterion 2.5.5. */
const FINGER = 44;

/** What covers the next cycle, by class; empty when it is whole and free. */
const covering = (page: Page) =>
  page.evaluate(() => {
    const box = document.querySelector('.next-card')?.getBoundingClientRect();
    if (!box) return ['no next card'];
    const points = [0.06, 0.5, 0.94].flatMap((across) =>
      [0.06, 0.5, 0.94].map((down) => [box.x + box.width * across, box.y + box.height * down] as const),
    );
    const found = points.map(([x, y]) => document.elementFromPoint(x, y));
    return [...new Set(found.filter((each) => !each?.closest('.next-card')).map((each) => String(each?.className ?? 'off the screen')))];
  });

/** Buttons, links and fields in sight that are smaller than a finger; words in running text are as large as the text (2.5.5, exception "inline"). */
const small = (page: Page) =>
  page.evaluate((finger) => {
    const all = [...document.querySelectorAll('button:not(.word), a:not(.skip), input:not([type=radio]), select, summary')];
    return all
      .filter((each) => each.checkVisibility({ visibilityProperty: true }) && !each.closest('.visually-hidden'))
      .map((each) => ({ name: each.textContent || each.className, box: each.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.width < finger - 0.5 || box.height < finger - 0.5))
      .map(({ name, box }) => `${name} ${Math.round(box.width)} x ${Math.round(box.height)}`);
  }, FINGER);

for (const size of PHONES) {
  test(`On ${size.width} x ${size.height} the next cycle stays whole beside caution, drill line and Play along, and targets fit fingers`, async ({
    page,
  }) => {
    const seen = witness(page);
    await page.setViewportSize(size);
    await page.goto('./');
    const play = page.locator('.play');
    await play.click();
    await expect(play).toHaveText('Stop');
    // It has begun to sound: what is said after it is there by then.
    await expect(page.locator('.panel[data-now]').first()).toBeAttached({ timeout: 20_000 });
    await play.click();
    await expect(page.getByText(/Stop when it hurts/)).toBeInViewport();
    await expect.poll(() => covering(page)).toEqual([]);
    await page.getByRole('button', { name: 'Understood' }).click();
    expect(await small(page)).toEqual([]);

    await page.getByRole('link', { name: 'Drills' }).click();
    const ladder = page.getByRole('listitem').filter({ hasText: 'Tempo ladder' }).getByRole('button', { name: 'Begin' });
    await ladder.scrollIntoViewIfNeeded();
    await ladder.click();
    await expect(page.getByRole('region', { name: 'Drill' }).first()).toBeInViewport();
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    await expect.poll(() => covering(page)).toEqual([]);
    await page.getByRole('button', { name: 'End the drill' }).click();

    await page.locator('.play-along-open').click();
    await page.getByRole('button', { name: 'Taps on this screen' }).click();
    await expect(page.getByRole('button', { name: 'Tap here' })).toBeInViewport();
    await expect.poll(() => covering(page)).toEqual([]);
    expect(await small(page)).toEqual([]);
    expectClean(seen);
  });
}

for (const width of [1280, 390] as const) {
  test(`The map of the form follows what sounds, to the last bars, at ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height: 844 });
    await page.goto('./');
    const blocks = page.locator('.map-block button');
    await expect(blocks.first()).toBeInViewport();
    await blocks.nth(-2).click();
    await expect(page.locator('.map-block button[data-here]')).toHaveText((await blocks.nth(-2).textContent()) ?? '');
    await expect(page.locator('.map-block button[data-here]')).toBeInViewport({ ratio: 0.9 });
    await page.evaluate(() => {
      document.querySelector('.form-map')?.scrollTo(0, 0);
    });
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect(page.locator('.map-block button[data-here]')).toHaveText((await blocks.nth(-1).textContent()) ?? '', { timeout: 30_000 });
    await expect(page.locator('.map-block button[data-here]')).toBeInViewport({ ratio: 0.9 });
  });
}

test('A rhythm can be tapped on the screen, and is judged', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('./');
  await page.locator('.play-along-open').click();
  await page.getByRole('button', { name: 'Taps on this screen' }).click();
  await page.locator('.play').click();
  const field = page.getByRole('button', { name: 'Tap here' });
  const tapOn = async () => {
    await field.click();
    return page.locator('.map-block button[data-here]').textContent();
  };
  await expect.poll(tapOn, { intervals: [300], timeout: 30_000 }).toBe('3');
  await page.locator('.play').click();
  await expect(page.getByRole('region', { name: 'What happened' })).toContainText('Pass 1');
});
