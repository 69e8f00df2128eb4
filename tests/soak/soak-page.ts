import { type Browser, type CDPSession, chromium, type Page } from '@playwright/test';
import { preview } from 'vite';
import { seeded } from '../../src/practice/seeded';
import { BROWSER_ARGUMENTS, findBrowser } from '../scripts/find-browser';
import { freePort } from '../scripts/free-port';
import { heapMb } from './heap';
import { WITNESS_STARTS } from './witness-starts';

/** What holds the page up while it plays. */
const BURDENS = ['none', 'main thread blocked 300 ms every second', 'processor slowed 6 times', 'page hidden'] as const;
type Burden = (typeof BURDENS)[number];

/** What the sound device was asked for in one stretch of playing. `late` has no lead left; `longestGapSeconds` would show lost sounds. */
interface Stretch {
  readonly burden: Burden;
  readonly seconds: number;
  readonly changes: number;
  readonly starts: number;
  readonly twice: number;
  /** The first of them: seconds of the audio clock, playing rate, seconds of the recording. */
  readonly twiceAt: readonly string[];
  readonly late: number;
  readonly leastLeadMs: number;
  readonly longestGapSeconds: number;
  readonly heapGrowthMb: number;
  readonly stopMs: number;
}

/** The built page, played in real time. */
export interface PageSoak {
  readonly stretches: readonly Stretch[];
  readonly rapidStarts: { readonly presses: number; readonly heapGrowthMb: number; readonly peakAfter: number };
}

const transport = (page: Page) => page.getByRole('region', { name: 'Transport' });
const CHANGES: readonly ((page: Page) => Promise<void>)[] = [
  (page) => transport(page).getByRole('button', { name: 'Faster', exact: true }).click(),
  (page) => transport(page).getByRole('button', { name: 'Slower', exact: true }).click(),
  (page) => transport(page).getByRole('button', { name: 'Busier' }).click(),
  (page) => transport(page).getByRole('button', { name: 'Less busy' }).click(),
  (page) => transport(page).getByRole('group', { name: 'Loop' }).getByRole('button').first().click(),
  (page) =>
    transport(page)
      .getByRole('button', { name: /^Direction/ })
      .click(),
  (page) =>
    transport(page)
      .getByRole('button', { name: /^Left (on|off)/ })
      .click(),
  // The key lies deep in the settings: the command is given as the settings give it.
  (page) =>
    page.evaluate(
      "(({ desk }) => desk.run({ kind: 'set', settings: { transpose: (desk.desk.getState().settings.transpose + 5) % 12 } }))(document.getElementById('page'))",
    ),
];

/** Tells the page that it is hidden, or shown again; a hidden page looks further ahead. */
const hide = (page: Page, hidden: boolean) =>
  page.evaluate(
    `Object.defineProperty(document, 'hidden', { configurable: true, get: () => ${hidden} }), document.dispatchEvent(new Event('visibilitychange')), null`,
  );

const play = (page: Page) => page.getByRole('button', { name: 'Play', exact: true }).click();
/** Stops, and gives the milliseconds until silence. */
const stop = (page: Page) =>
  page
    .getByRole('button', { name: 'Stop', exact: true })
    .evaluate((button) => (window as unknown as { soakStop: (of: Element) => Promise<number> }).soakStop(button));

async function stretch(page: Page, devtools: CDPSession, burden: Burden, seconds: number, seed: number): Promise<Stretch> {
  const random = seeded(seed);
  await play(page);
  await page.waitForTimeout(3000);
  const before = await heapMb(devtools);
  await page.evaluate(
    'Object.assign(window.soakSeen, { starts: 0, twice: 0, twiceAt: [], late: 0, leastLeadMs: Infinity, longestGap: 0, last: null })',
  );
  if (burden === 'processor slowed 6 times') await devtools.send('Emulation.setCPUThrottlingRate', { rate: 6 });
  if (burden.startsWith('main'))
    await page.evaluate(
      'window.soakBlock = setInterval(() => { const to = performance.now() + 300; while (performance.now() < to); }, 1000)',
    );
  if (burden === 'page hidden') await hide(page, true);
  let changes = 0;
  const until = Date.now() + seconds * 1000;
  while (Date.now() < until) {
    await page.waitForTimeout(200 + random() * 800);
    const change = CHANGES[Math.floor(random() * CHANGES.length)];
    // A level that is the last one has no button to press: no change then.
    changes += await (change?.(page) ?? Promise.resolve()).then(
      () => 1,
      () => 0,
    );
  }
  await page.evaluate('clearInterval(window.soakBlock)');
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  if (burden === 'page hidden') await hide(page, false);
  const seen = (await page.evaluate(
    '(({ starts, twice, twiceAt, late, leastLeadMs, longestGap }) => ({ starts, twice, twiceAt, late, leastLeadMs, longestGapSeconds: longestGap }))(window.soakSeen)',
  )) as Pick<Stretch, 'starts' | 'twice' | 'twiceAt' | 'late' | 'leastLeadMs' | 'longestGapSeconds'>;
  const heapGrowthMb = (await heapMb(devtools)) - before;
  return { burden, seconds, changes, ...seen, heapGrowthMb, stopMs: await stop(page) };
}

async function rapidStarts(page: Page, devtools: CDPSession, presses: number): Promise<PageSoak['rapidStarts']> {
  const before = await heapMb(devtools);
  for (let press = 0; press < presses; press += 1) {
    await play(page);
    await page.waitForTimeout(press % 7 === 0 ? 120 : 5);
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
  }
  await page.waitForTimeout(1500);
  // The meter holds less than a second, so all of it lies after the last Stop.
  const peakAfter = (await page.evaluate('window.soakPeak()')) as number;
  return { presses, heapGrowthMb: (await heapMb(devtools)) - before, peakAfter };
}

/** Plays the page that BROWSER_TEST_DIST (or dist/) holds for `minutes` of real time, under each burden in turn, with random live changes, then starts and stops it 200 times. */
export async function soakPage(minutes: number, seed: number, presses = 200): Promise<PageSoak> {
  const port = await freePort();
  const outDir = process.env.BROWSER_TEST_DIST ?? 'dist';
  const server = await preview({ logLevel: 'silent', build: { outDir }, preview: { host: '127.0.0.1', port, strictPort: true } });
  const browser: Browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGUMENTS });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB', serviceWorkers: 'block' });
    page.setDefaultTimeout(2000);
    await page.addInitScript({ content: WITNESS_STARTS });
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('Performance.enable');
    await page.goto(`http://127.0.0.1:${port}/`);
    const stretches: Stretch[] = [];
    for (const burden of BURDENS) stretches.push(await stretch(page, devtools, burden, (minutes * 60) / BURDENS.length, seed));
    return { stretches, rapidStarts: await rapidStarts(page, devtools, presses) };
  } finally {
    await browser.close();
    await server.close();
  }
}
