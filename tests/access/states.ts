/** The states of the page that `npm run check:access` looks at, reached by what stands in the words' tables, so in any language. */
import type { Page } from '@playwright/test';
import { LINK_WORDS } from '../../src/words/link';
import { LISTENING } from '../../src/words/listening';
import { SAFETY_WORDS } from '../../src/words/safety';
import { SCREEN } from '../../src/words/screen';
import { TAKE_ALONG_WORDS } from '../../src/words/take-along';

/** One state: its name, and how it is reached from the one before. */
export interface State {
  readonly name: string;
  readonly reach: (page: Page) => Promise<unknown>;
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).first().click();
const go = async (page: Page, place: string) => {
  await page.evaluate((to) => {
    window.location.hash = `#/${to}`;
  }, place);
  await page.locator(`a[href="#/${place}"][aria-current="page"]`).waitFor();
};
const leave = (page: Page) => page.keyboard.press('Escape');
const editor = (page: Page) => page.locator('textarea').first();
/** A header button where the window is wide; a narrow one keeps it in the sheet of settings, looked at by itself. */
const ifShown = async (page: Page, selector: string) => {
  const button = page.locator(selector).first();
  if (await button.isVisible()) await button.click();
};

const FAULTY = 'title: Low Tide\nclave: 2-3 son\n\n[A]\n| Gm7 | C9x | Fmaj7 | %\n';

/** In this order, on one page: each begins where the one before ended. */
export const STATES: readonly State[] = [
  { name: 'Practise', reach: (page) => page.locator('.now-card').waitFor() },
  { name: 'more settings', reach: (page) => press(page, SCREEN.more) },
  {
    name: 'balance',
    reach: async (page) => {
      await press(page, SCREEN.less);
      await ifShown(page, '.header-balance');
    },
  },
  {
    name: 'glossary',
    reach: async (page) => {
      await leave(page);
      await ifShown(page, '.header-words');
    },
  },
  {
    name: 'language and looks',
    reach: async (page) => {
      await leave(page);
      await ifShown(page, '.header-looks');
    },
  },
  {
    name: 'keys',
    reach: async (page) => {
      await leave(page);
      await page.keyboard.press('?');
    },
  },
  {
    name: 'a stroke and its reason',
    reach: async (page) => {
      await leave(page);
      await page.getByRole('gridcell').first().press('Enter');
    },
  },
  {
    name: 'staff',
    reach: async (page) => {
      await leave(page);
      await page.keyboard.press('v');
      await page.waitForTimeout(800);
    },
  },
  {
    name: 'playing',
    reach: async (page) => {
      await page.keyboard.press('v');
      await press(page, SCREEN.play);
      await page.locator('.panel[data-now]').first().waitFor({ timeout: 20_000 });
    },
  },
  {
    name: 'ways to play along',
    reach: async (page) => {
      await press(page, SCREEN.stop);
      await page.locator('.play-along-open').click();
      await page.getByText(LISTENING.choose).waitFor();
    },
  },
  {
    name: 'listening to keys',
    reach: async (page) => {
      await page.locator('.play-along').getByRole('button', { name: LISTENING.sources.keys }).click();
      await page.locator('.lamp').waitFor();
    },
  },
  {
    name: 'report of a pass',
    reach: async (page) => {
      await ifShown(page, '.loop-control button[aria-pressed="false"]');
      await press(page, SCREEN.play);
      await page.locator('.panel[data-now]').first().waitFor({ timeout: 20_000 });
      for (let stroke = 0; stroke < 8; stroke += 1) {
        await page.keyboard.press('q');
        await page.waitForTimeout(200);
      }
      await press(page, SCREEN.stop);
      await page.locator('.report').waitFor();
    },
  },
  {
    name: 'rating by ear',
    reach: async (page) => {
      await page.reload();
      await page.locator('.play-along-open').click();
      await page.locator('.play-along').getByRole('button', { name: LISTENING.sources.none }).click();
    },
  },
  { name: 'Chart', reach: (page) => go(page, 'chart') },
  {
    name: 'Chart with faults',
    reach: async (page) => {
      await editor(page).fill(FAULTY);
      await page.locator('.wrong, .caret-fault').first().waitFor();
    },
  },
  {
    name: 'a link for a student',
    reach: async (page) => {
      await editor(page).fill(FAULTY.replace('C9x', 'C9').replace('%', '% |'));
      await press(page, LINK_WORDS.make);
      await page.locator('.link-panel, [class*="link"] svg').first().waitFor();
    },
  },
  {
    name: 'everything is to be deleted',
    reach: async (page) => {
      await leave(page);
      await page.getByRole('button', { name: SAFETY_WORDS.deleteAll, exact: true }).click();
    },
  },
  {
    name: 'Sheet, lesson',
    reach: (page) => go(page, 'sheet').then(() => page.locator('[data-engraved="ready"]').first().waitFor({ timeout: 30_000 })),
  },
  {
    name: 'Sheet, its choices',
    reach: (page) => page.locator('.sheet-options summary').first().click(),
  },
  {
    name: 'Sheet, pencil list',
    reach: async (page) => {
      await page.locator('.sheet-options input[value="list"], .sheet-options button').last().click();
      await page.waitForTimeout(600);
    },
  },
  {
    name: 'files to take along',
    reach: async (page) => {
      await press(page, TAKE_ALONG_WORDS.open);
      await page.locator('[class^="take-along"]').first().waitFor();
    },
  },
  {
    name: 'Drills',
    reach: async (page) => {
      await leave(page);
      await go(page, 'drills');
      await page.locator('.drill-card').first().waitFor();
    },
  },
  { name: 'which side', reach: (page) => page.locator('.drill-card .key').first().click() },
  {
    name: 'a drill on the board',
    reach: async (page) => {
      await go(page, 'practise');
      await go(page, 'drills');
      await page.locator('.drill-card .key').nth(4).click();
      await page.locator('.drill-bar').waitFor();
    },
  },
  { name: 'Journal', reach: (page) => go(page, 'journal') },
];
