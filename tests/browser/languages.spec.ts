/** Nothing stays English when Spanish is spoken: every place and panel is shown in both, and what is equal must be a word of both. */
import { type Browser, expect, type Page, test } from '@playwright/test';
import { expectClean, witness } from './witness';

/** The same in both languages: reviewed by hand. Trade words, names, signs, and what is typed into charts. */
const SAME = new Set(
  [
    'Contratiempo',
    // Every language gives its own name.
    'English, Español, Do Re Mi',
    'Tempo, Clave, clave, jazz, swing, piano',
    // Words of the trade.
    'bloque, bombo, campana, cierre, conga, coro, cáscara, guajeo, güiro, mambo, maracas, martillo, montuno, moña, ponche, riff, tresillo, tumbao, vamp, timbales',
    'bachata, bembé, bolero, bolero-son, bossa, cha-cha-chá, cumbia, danzón, descarga, guajira, guaracha, merengue, plena, rumba, salsa, son, son montuno, songo, timba',
    // Signs, keys and units.
    'Hm7, Esc, MusicXML, A4, 48 kHz, ms, stop, N.C., A–Z, kB',
    // Titles of the demo book, and section names.
    'Last Ferry, Rain on the Slipway, Harbour Lights at Nine, The Night Pilot, Quay Street Parade, Seven Planks Down, Coro',
  ].flatMap((line) => line.split(', ')),
);
/** Chords, counts, numbers, keys on a keyboard; text of the chart itself. */
const NO_WORD = /^([A-G][♭♯b#]*(m|maj|min|dim|ø|\+)?[0-9]*([♭♯b#/(][0-9A-G()♭♯b#/]*)*[ ,→>–-]*)+$/;
const isWord = (text: string): boolean => /\p{L}{2}/u.test(text) && !NO_WORD.test(text) && !SAME.has(text);

/** Everything that is read or heard on the page: text, and the names that elements have for those who do not see them. */
const texts = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found = new Set([document.title]);
    for (const element of document.body.querySelectorAll('*')) {
      if (element.closest('script, noscript, textarea, .ink, .chart-ink, [lang]:not(html)')) continue;
      for (const name of ['aria-label', 'title', 'placeholder', 'alt', 'aria-valuetext']) found.add(element.getAttribute(name) ?? '');
      for (const node of element.childNodes) if (node instanceof Text) found.add(node.data);
    }
    return [...found].map((text) => text.replace(/\s+/g, ' ').trim());
  });

const CHART = 'title: X\nstyle: cha-cha-cha\n[A]\n| C F | Dm7 | C |\n[B, role: mambo, on cue]\n| Am7 {1 2&} | stop | D |';

/** What each place and panel says, by its name. */
async function tour(browser: Browser, locale: string): Promise<ReadonlyMap<string, readonly string[]>> {
  const context = await browser.newContext({
    locale,
    serviceWorkers: 'block',
    viewport: { width: 1440, height: 1000 },
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  const seen = witness(page);
  const said = new Map<string, readonly string[]>();
  const look = async (where: string): Promise<void> => void said.set(where, await texts(page));
  const opened = async (button: string, panel: string, where: string): Promise<void> => {
    await page.locator(button).first().click();
    await expect(page.locator(panel).first()).toBeVisible();
    await look(where);
    await page.keyboard.press('Escape');
  };
  const goTo = async (place: string, there: string): Promise<void> => {
    await page.evaluate((hash) => {
      window.location.hash = hash;
    }, `#/${place}`);
    await expect(page.locator(there).first()).toBeVisible();
    await page.evaluate(() => {
      for (const details of document.querySelectorAll('details')) details.open = true;
    });
    await look(place);
  };
  await page.goto('./');
  await expect(page.locator('.hand-strip')).toBeVisible();
  await look('practise');
  await opened('.key-more', '.more', 'more');
  await opened('.header-balance', '.balance', 'balance');
  await opened('.keys-button', '.key-list', 'keys');
  await opened('.header-looks', '.view-panel, .balance, [class*=looks]', 'view');
  await opened('.header-words', '.glossary', 'words');
  await page.locator('[role=gridcell]').first().click();
  await expect(page.locator('.stroke-editor')).toBeVisible();
  await look('a stroke');
  await goTo('sheet', '.sheet-options');
  await goTo('drills', '.drill-list');
  await goTo('journal', '.journal, .journal-place, main h2');
  await goTo('chart', '.demo-book');
  await page.locator('textarea').first().fill(CHART.replace('D |', 'Hm7 | C F G |'));
  await expect(page.locator('.fault').nth(1)).toBeVisible();
  await look('faults');
  await page.locator('textarea').first().fill(CHART);
  await expect(page.locator('.fault')).toHaveCount(0);
  await look('an odd form');
  await goTo('practise', '[role=gridcell]');
  await opened('.key-more', '.more', 'notices');
  await context.close();
  expectClean(seen);
  return said;
}

test('In Spanish no word stays English on any place, in any panel, or in the names that are only heard', async ({ browser }) => {
  const [english, spanish] = await Promise.all([tour(browser, 'en-GB'), tour(browser, 'es-PR')]);
  const left = [...english].flatMap(([where, words]) => {
    const said = new Set(spanish.get(where));
    return words.filter((text) => said.has(text) && isWord(text)).map((text) => `${where}: ${text}`);
  });
  expect(left).toEqual([]);
  // The tour saw the places: each says more than a heading.
  for (const [where, words] of spanish) expect(words.filter(isWord).length, where).toBeGreaterThan(20);
});
