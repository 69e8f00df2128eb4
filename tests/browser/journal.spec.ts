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
  // From the set itself it is one touch.
  await page.getByRole('link', { name: 'Chart' }).click();
  await page.locator('.set-list summary').click();
  await page.getByRole('button', { name: 'Its moves and pencil lists' }).click();
  await expect(page.getByRole('link', { name: 'Journal' })).toHaveAttribute('aria-current', 'page');
  await expect(evening).toContainText('you have 1;');
  await expect(evening.getByRole('button', { name: 'Pencil lists of the whole set' })).toBeVisible();
  expectClean(seen);
});

test('Five charts, two evenings: from the set with its date over the moves it names to the pencil lists, printed in one go', async ({
  page,
}) => {
  const seen = witness(page);
  await page.addInitScript(() => {
    window.print = () => document.documentElement.setAttribute('data-printed', '');
  });
  await page.goto('./#/chart');
  await page.getByRole('button', { name: 'New set list' }).click();
  await page.locator('.set-list summary').click();
  const titles: string[] = [];
  const demos = page.getByRole('region', { name: 'Demo book' }).getByRole('button');
  for (let at = 0; at < 5; at += 1) {
    const asked = (await demos.nth(at).textContent()) ?? '';
    await demos.nth(at).click();
    const add = page.getByRole('button', { name: /^Add “/ });
    const titleShown = async () => /title: *(.*)/.exec(await page.locator('textarea').first().inputValue())?.[1]?.trim() ?? 'none yet';
    await expect.poll(async () => asked.includes(await titleShown()), 'the chart that was asked for lies open').toBe(true);
    const title = await titleShown();
    await expect(add).toContainText(title);
    await add.click();
    titles.push(title);
  }
  expect(new Set(titles).size).toBe(5);
  await expect(page.locator('.set-charts > li')).toHaveCount(5);
  await page.locator('.set-list input[type=date]').fill('2199-11-28');
  await page.getByRole('link', { name: 'Journal' }).click();
  await page.getByRole('button', { name: 'Count the moves of Set' }).click();
  const evening = page.getByRole('region', { name: 'What deserves the evening' });
  await expect(evening).toContainText(/\d+ bars use \d+ moves of the hand; you have 0/);
  const share = async (): Promise<number> => Number(/(\d+) % of the bars can be played/.exec((await evening.textContent()) ?? '')?.[1]);
  const before = await share();
  for (let had = 1; had <= 2; had += 1) {
    const loop = evening.getByRole('button', { name: /^Loop / }).first();
    const [, from = '', to = ''] = /^Loop (.+) to (.+)$/.exec((await loop.getAttribute('aria-label')) ?? '') ?? [];
    expect(from).not.toBe('');
    await loop.click();
    await expect(page.getByRole('group', { name: 'Loop' })).toContainText(/Loop \d+–\d+/);
    await page.getByRole('link', { name: 'Journal' }).click();
    // The same move, by its name: it is ticked off.
    await evening
      .getByRole('checkbox', { name: `I have ${from} to ${to}`, exact: true })
      .first()
      .click();
    await expect(evening).toContainText(`you have ${had};`);
  }
  expect(await share()).toBeGreaterThanOrEqual(before);
  await evening.getByRole('button', { name: 'Pencil lists of the whole set' }).click();
  const pages = evening.locator('.sheet-page');
  await expect(pages).toHaveCount(5);
  for (const [at, title] of titles.entries()) await expect(pages.nth(at).locator('.pencil-title')).toHaveText(title);
  await expect(evening.getByRole('button', { name: 'Print 5 pages' })).toBeInViewport();
  await expect(pages.first().locator('.pencil-title')).toBeInViewport();
  // A page as wide as its paper does not make a telephone scroll sideways.
  await page.setViewportSize({ width: 390, height: 844 });
  await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  await evening.getByRole('button', { name: 'Print 5 pages' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-printed', '');
  // As the printer gets it: five sheets, one for each chart, and nothing beside them.
  const pdf = await page.pdf({ preferCSSPageSize: true });
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(5);
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('heading', { name: 'What deserves the evening' })).toBeHidden();
  await expect(page.locator('.assignment')).toBeHidden();
  await page.emulateMedia({ media: 'screen' });
  expectClean(seen);
});

test('A session goes through blocks and rests to its break and its end, and says what it leaves for another day', async ({ page }) => {
  const seen = witness(page);
  await page.clock.install();
  await page.goto('./#/journal');
  await page.getByRole('link', { name: 'Go and play' }).click();
  await page.getByRole('button', { name: 'Play along' }).click();
  await page.getByRole('button', { name: 'I rate myself' }).click();
  const rate = async (fromBar: number, level: number) => {
    await page.evaluate(
      ([from, at]) => {
        const { desk } = document.getElementById('page') as unknown as { desk: { run(command: unknown): void } };
        desk.run({ kind: 'set', settings: { level: at } });
        desk.run({ kind: 'loop bars', loop: { fromBar: from, toBar: (from ?? 0) + 2 } });
      },
      [fromBar, level],
    );
    await page.getByRole('group', { name: 'How was that pass?' }).getByRole('button', { name: 'Clean' }).click();
  };
  // Four loops at one level; a fifth thing, one level up, is the near twin of all of them and new today.
  await rate(0, 3);
  for (const fromBar of [0, 2, 4, 6]) await rate(fromBar, 2);
  await page.getByRole('link', { name: 'Journal' }).click();
  const offer = page.getByRole('region', { name: 'A session with rests' });
  await expect(offer.getByRole('listitem')).toHaveText([7, 5, 3, 1].map((bar) => `Last Ferry, bars ${bar}–${bar + 1}, level 2`));
  await expect(offer).toContainText('Left for another day, because it is so close to something new today: Last Ferry, bars 1–2, level 3.');
  await offer.getByRole('checkbox').check();
  await offer.getByRole('button', { name: 'Begin' }).click();

  const line = page.getByRole('region', { name: 'Session' });
  const later = async (seconds: number, prompt: string, answer: string) => {
    await page.clock.fastForward(seconds * 1000);
    await expect(line).toContainText(prompt);
    await line.getByRole('button', { name: answer }).click();
  };
  /** 30 s on, 30 off, three times, as in the study of rests named beside the plan's numbers. */
  const block = async (bar: number) => {
    await expect(line).toContainText(`Last Ferry, bars ${bar}–${bar + 1}, level 2`);
    await expect(page.getByRole('group', { name: 'Loop' })).toContainText(`Loop ${bar}–${bar + 1}`);
    for (let round = 1; round < 3; round += 1) {
      await later(31, 'A rest is due.', 'Rest now');
      await expect(line).toContainText('Rest: hands off the keys.');
      await later(31, 'Ready for the next one?', 'Go on');
    }
  };
  await block(7);
  await later(31, 'Ready for the next one?', 'Go on');
  await block(5);
  await later(31, 'Ready for the next one?', 'Go on');
  await block(3);
  await later(31, 'Three blocks done: a break of five minutes', 'Take the break');
  await expect(line).toContainText('Break: five minutes away from the piano.');
  await page.clock.fastForward(200_000);
  await expect(line.getByRole('button', { name: 'Go on' }), 'the break is five minutes').toHaveCount(0);
  await later(101, 'Ready for the next one?', 'Go on');
  await block(1);
  await page.clock.fastForward(31_000);
  await expect(line).toContainText('That was the session.');
  await expect(line).toContainText('Left for another day');
  await line.getByRole('button', { name: 'Done' }).click();
  await expect(line).toHaveCount(0);
  expectClean(seen);
});
