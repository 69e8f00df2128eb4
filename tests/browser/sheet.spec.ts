/** The lesson sheet and the staff, engraved and printed by a real browser and read back by tools that know nothing of it. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, type Page, type TestInfo, test } from '@playwright/test';
import { parseMidi } from 'midi-file';
import { commitsDuring, countCommits, expectClean, witness } from './witness';

/** Has every system of the sheet engraved, as before printing, and waits until it is. */
async function engraved(page: Page): Promise<number> {
  await expect(page.locator('[data-sheet-page]').first()).toBeVisible();
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  const blocks = page.locator('[data-block=system]');
  await expect(async () => {
    const systems = await page.locator('.sheet-block .system svg').count();
    expect(systems).toBeGreaterThan(0);
    expect(systems).toBe(await blocks.count());
  }).toPass({ timeout: 20_000 });
  return page.locator('.sheet-block .system svg').count();
}

/** Output of a command-line reader, or null where it is not installed. */
function read(command: string, ...args: string[]): string | null {
  try {
    return execFileSync(command, args, { encoding: 'utf8' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

async function printed(page: Page, info: TestInfo, name: string): Promise<string> {
  mkdirSync(info.outputDir, { recursive: true });
  const path = info.outputPath(name);
  writeFileSync(path, await page.pdf({ preferCSSPageSize: true, printBackground: true }));
  return path;
}

test('The sheet prints as it is shown, on both papers, with fonts embedded and its words readable', async ({ page }, info) => {
  const seen = witness(page);
  await page.goto('./#/sheet');
  await expect(page.locator('.sheet-page').first().locator('.system svg').first()).toBeVisible({ timeout: 20_000 });
  const systems = await page.locator('[data-block=system]').count();
  expect(await page.locator('.sheet-block .system svg').count(), 'pages far from the window are not engraved yet').toBeLessThan(systems);
  await engraved(page);
  const title = (await page.locator('.sheet-page h2').textContent()) ?? '';
  const chord = (await page.locator('.sheet-page text.chord').first().textContent()) ?? '';
  expect(chord).not.toBe('');
  for (const [paper, points] of [
    // ISO 216 A4 and 8.5 × 11 inches in points of 1/72 inch.
    ['A4', [595.28, 841.89]],
    ['Letter', [612, 792]],
  ] as const) {
    await page.getByRole('radio', { name: paper }).check();
    await engraved(page);
    const pages = await page.locator('.sheet-page').count();
    const path = await printed(page, info, `${paper}.pdf`);
    const facts = read('pdfinfo', path);
    if (facts === null) continue;
    expect(Number(/Pages:\s+(\d+)/.exec(facts)?.[1]), 'as many pages as are shown').toBe(pages);
    const size = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(facts)?.slice(1).map(Number) ?? [];
    // The browser rounds pages to whole CSS pixels of 0.75 points.
    expect(Math.abs((size[0] ?? 0) - points[0])).toBeLessThan(0.8);
    expect(Math.abs((size[1] ?? 0) - points[1])).toBeLessThan(0.8);
    const fonts = (read('pdffonts', path) ?? '').trim().split('\n').slice(2);
    expect(fonts.length).toBeGreaterThan(0);
    for (const font of fonts) expect(font, 'embedded').toMatch(/\s(yes)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+$/);
    const text = read('pdftotext', '-layout', path, '-') ?? '';
    for (const words of [title, chord, '2-3 son', 'The other direction: 3-2 son', 'half note = ', `page ${pages} of ${pages}`])
      expect(text).toContain(words);
    expect(text).not.toMatch(/undefined|NaN|\[object/);
  }
  expectClean(seen);
});

/** What a copyist would send back: things that are cut, too small, or on top of something else. */
const faultsOn = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const inside = (inner: DOMRect, outer: DOMRect): boolean =>
      inner.left >= outer.left - 1 && inner.right <= outer.right + 1 && inner.top >= outer.top - 1 && inner.bottom <= outer.bottom + 1;
    for (const sheet of document.querySelectorAll('.sheet-page')) {
      const box = sheet.getBoundingClientRect();
      const look = getComputedStyle(sheet);
      if (look.backgroundColor !== 'rgb(255, 255, 255)' || look.color !== 'rgb(0, 0, 0)')
        found.push(`page is ${look.color} on ${look.backgroundColor}`);
      for (const block of sheet.querySelectorAll('.sheet-block')) {
        if (!inside(block.getBoundingClientRect(), box)) found.push(`a block leaves its page: ${block.textContent?.slice(0, 40)}`);
        if (block.scrollHeight > block.clientHeight + 2)
          found.push(`${block.scrollHeight - block.clientHeight} px too much in a block: ${block.textContent?.slice(0, 40)}`);
      }
    }
    for (const svg of document.querySelectorAll<SVGSVGElement>('.sheet-block svg')) {
      const box = svg.getBoundingClientRect();
      const pxPerMm =
        (svg.closest<HTMLElement>('.sheet-page')?.getBoundingClientRect().width ?? 0) /
        Number.parseFloat(svg.closest<HTMLElement>('.sheet-page')?.style.width ?? '0');
      const staffMm = (40 * box.width) / svg.viewBox.baseVal.width / pxPerMm;
      if (!(staffMm >= 6.5)) found.push(`staff of ${staffMm.toFixed(2)} mm`);
      for (const row of ['chord', 'bar-label']) {
        const texts = [...svg.querySelectorAll<SVGTextElement>(`text.${row}`)];
        const heights = new Set(texts.map((text) => text.getAttribute('y')));
        if (texts.length > 0 && heights.size !== 1) found.push(`${row}s on ${heights.size} heights`);
        const boxes = texts.map((text) => text.getBoundingClientRect()).sort((a, b) => a.left - b.left);
        boxes.forEach((one, i) => {
          const next = boxes[i + 1];
          if (next && one.right > next.left) found.push(`two ${row}s overlap: ${texts.map((text) => text.textContent).join(' ')}`);
        });
      }
      const { width, height } = svg.viewBox.baseVal;
      for (const head of svg.querySelectorAll<SVGTextElement>('.vf-notehead text')) {
        const { x, y } = head.getStartPositionOfChar(0);
        if (!(x > 0 && x < width && y > 0 && y < height)) found.push('a note head outside its system');
      }
      if (svg.querySelectorAll('text.count').length % 4 !== 0) found.push('the count is not whole');
    }
    return found;
  });

test('Nothing on the sheets is cut, too small or on top of something else, whatever is on them', async ({ page }) => {
  // Many sheets one after the other.
  test.slow();
  const seen = witness(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.goto('./#/sheet');
  await engraved(page);
  expect(await faultsOn(page)).toEqual([]);
  const choose = async (name: string): Promise<void> => {
    await page.locator('.sheet-options label', { hasText: name }).first().click();
    await engraved(page);
    expect(await faultsOn(page), name).toEqual([]);
  };
  await page.getByText('What goes on it').click();
  await choose('The first section');
  await page.getByRole('textbox', { name: /Teacher/ }).fill('Bars 1 to 4 only, left hand first. '.repeat(11));
  await choose('Sixteenths, one bar a cycle');
  await choose('Eighths, cut time');
  await choose('Each alone, then both');
  await choose('Three levels');
  await choose('Worksheet');
  await expect(page.locator('.sheet-page').last().getByRole('heading', { name: 'Answers' })).toBeVisible();
  await choose('Find the crossed bars');
  expectClean(seen);
});

test('The pencil list is one page, its lines break where they are touched, and it is there again after a reload', async ({
  page,
}, info) => {
  const seen = witness(page);
  await page.goto('./#/sheet');
  await page.locator('.sheet-options label', { hasText: 'Pencil list' }).click();
  const counts = page.getByRole('textbox', { name: 'Bars in each line' });
  await expect(counts).toHaveValue('4 4 4 4 4');
  await page.getByRole('button', { name: 'Line ends after bar 2 of the list' }).click();
  await expect(counts).toHaveValue('2 2 4 4 4 4');
  await page.reload();
  await expect(counts).toHaveValue('2 2 4 4 4 4');
  const path = await printed(page, info, 'list.pdf');
  const text = read('pdftotext', '-layout', path, '-');
  if (text !== null) for (const words of ['Last Ferry', '2-3 son', 'Coro', 'B7', 'page 1 of 1']) expect(text).toContain(words);
  expectClean(seen);
});

test('The MIDI button of the sheet saves the same music', async ({ page }) => {
  await page.goto('./#/sheet');
  await engraved(page);
  const download = page.waitForEvent('download');
  await page.getByRole('main').getByRole('button', { name: 'MIDI file' }).click();
  const file = parseMidi(readFileSync(await (await download).path()));
  expect(file.header).toMatchObject({ format: 1, ticksPerBeat: 480 });
  expect(file.tracks.every((track) => track.at(-1)?.type === 'endOfTrack')).toBe(true);
});

test('The staff follows what is heard without a commit per frame', async ({ page }) => {
  const seen = witness(page);
  await countCommits(page);
  await page.goto('./');
  await page
    .getByRole('button', { name: 'Staff', exact: true })
    .or(page.getByRole('radio', { name: 'Staff' }))
    .first()
    .click();
  await expect(page.locator('.staff [data-engraved=ready] svg').first()).toBeVisible({ timeout: 15_000 });
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.locator('.staff .lit').first()).toBeVisible({ timeout: 15_000 });
  const { frames, commits } = await commitsDuring(page, 1_000);
  expect(frames).toBeGreaterThan(5);
  expect(commits, 'the playhead and the lit notes are not commits').toBeLessThanOrEqual(3);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect(page.locator('.staff .lit')).toHaveCount(0);
  expectClean(seen);
});
