/**
 * What a visit leaves in memory (`npm run bench -- --only visit`): the built page in Chromium, driven by hand through every place and panel, with
 * charts typed and opened, music with live changes, a round played along to a report, a drill, and a MIDI file and the sheet as PDF saved. The
 * page is not loaded anew between visits. The first one fetches what is fetched once; what stays after the second is the figure.
 * Counted after collection: the heap of the page's own thread, and the nodes and listeners that it still holds.
 */
import type { CDPSession, Page } from '@playwright/test';
import { injectKeyboard } from '../browser/fake-keyboard';
import { onBuiltPage, RUNNER_HELPER } from './built-page';
import { ofBudget, type Results } from './measure';

/** Visits whose memory is told: the second over the first is the figure, later ones show whether it goes on. */
const VISITS = 4;
/** How long music plays in each visit, in milliseconds. */
const PLAYED_MS = 8000;
/** How long the page has to come to rest, in milliseconds. The bytes of a download, which it lets go after a minute, lie outside this heap. */
const REST_MS = 5000;
/** Typed into the same chart in each visit. */
const TYPED = (bridge: string): string =>
  `title: Quay Street Rehearsal\nkey: F\nclave: 2-3 son\ntempo: half = 96\n\n[A]\n| Gm7 | C7 | F6 | D7 |\n[B]\n${bridge}\n`;

const press = (page: Page, name: string | RegExp): Promise<void> =>
  page
    .getByRole('button', { name, ...(typeof name === 'string' && { exact: true }) })
    .first()
    .click();
const place = (page: Page, name: string): Promise<void> => page.getByRole('link', { name, exact: true }).first().click();
const region = (page: Page, name: string) => page.getByRole('region', { name, exact: true });

async function download(page: Page, start: () => Promise<void>): Promise<void> {
  const waiting = page.waitForEvent('download', { timeout: 120_000 });
  await start();
  await (await waiting).delete();
}

/** Music for some seconds with live changes, each of them taken back. */
async function playWithChanges(page: Page): Promise<void> {
  await press(page, 'Play');
  for (const there of ['Busier', 'Less busy']) {
    await page.waitForTimeout(PLAYED_MS / 4);
    await press(page, there);
    await press(page, /^Direction/);
  }
  await page.waitForTimeout(PLAYED_MS / 2);
  await press(page, 'Stop');
}

/** A round played along on an injected keyboard, until its report has been read. */
async function playAlong(page: Page): Promise<void> {
  await press(page, 'Play along');
  await region(page, 'Play along').getByRole('button', { name: 'MIDI keyboard' }).click();
  await press(page, 'Play');
  await page.locator('.now-card .panel[data-now]').waitFor({ timeout: 20_000 });
  await page.evaluate(async (lasts) => {
    const notes = Array.from({ length: lasts / 200 }, (_, note) => ({
      afterMs: note * 200,
      midi: 60 + (note % 12),
      velocity: 80,
      lastsMs: 90,
    }));
    await window.testKeyboard?.play(notes, performance.now());
  }, PLAYED_MS);
  await press(page, 'Stop');
  await region(page, 'What happened').waitFor();
  await page.keyboard.press('Escape');
  await press(page, 'Play along');
}

async function writeCharts(page: Page): Promise<void> {
  await place(page, 'Chart');
  const editor = page.getByRole('textbox', { name: 'Chart text' });
  await editor.fill(TYPED('| Bbmaj7 | C7 | F6 | % |'));
  await editor.fill(TYPED('| Gm7 | C7 | F6 | % |'));
  await page.getByText('Kept on this device.').waitFor();
  await download(page, () => press(page, 'MIDI file'));
}

async function takeSheetAlong(page: Page): Promise<void> {
  await place(page, 'Sheet');
  await page.locator('.sheet-page svg').first().waitFor();
  await press(page, 'Take along');
  await download(page, () => press(page, 'Save Sheet (PDF)'));
  await page.keyboard.press('Escape');
}

async function drill(page: Page): Promise<void> {
  await place(page, 'Drills');
  await page.getByRole('listitem').filter({ hasText: 'Which side?' }).getByRole('button', { name: 'Begin' }).click();
  await press(page, 'Hear it');
  await press(page, 'It begins on the 2-side');
}

/** Everything once; begins and ends at the same place with the same chart and settings. */
async function visit(page: Page): Promise<void> {
  await place(page, 'Practise');
  for (const panel of ['Words', 'Balance', /^View/]) {
    await press(page, panel);
    await page.keyboard.press('Escape');
  }
  await press(page, 'Staff');
  await page.locator('.practise svg, .stave svg, svg.staff').first().waitFor();
  await press(page, 'Staff');
  await playWithChanges(page);
  await playAlong(page);
  await writeCharts(page);
  await takeSheetAlong(page);
  await drill(page);
  await place(page, 'Journal');
  await region(page, 'Played lately').waitFor();
  await place(page, 'Practise');
}

interface Held {
  readonly heapMb: number;
  readonly nodes: number;
  readonly listeners: number;
}

async function held(devtools: CDPSession): Promise<Held> {
  for (let time = 0; time < 3; time += 1) await devtools.send('HeapProfiler.collectGarbage');
  const { metrics } = await devtools.send('Performance.getMetrics');
  const of = (wanted: string): number => metrics.find(({ name }) => name === wanted)?.value ?? Number.NaN;
  return { heapMb: of('JSHeapUsedSize') / 1e6, nodes: of('Nodes'), listeners: of('JSEventListeners') };
}

/** Megabytes, nodes and listeners that stay after identical visits. */
export const measureVisit = (): Promise<Results> =>
  onBuiltPage(async (browser, address) => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB', acceptDownloads: true });
    // So that the sheet is handed over as a download, which a program can take.
    await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
    await page.addInitScript(RUNNER_HELPER);
    await injectKeyboard(page);
    await page.goto(address);
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('Performance.enable');
    const after: Held[] = [];
    for (let count = 0; count < VISITS; count += 1) {
      await visit(page);
      await page.waitForTimeout(REST_MS);
      after.push(await held(devtools));
    }
    const [first, second] = after;
    const byVisit = (what: keyof Held) => Object.fromEntries(after.map((one, count) => [`visit ${count + 1}`, one[what]]));
    return {
      visitGrowthMb: ofBudget(
        (second?.heapMb ?? Number.NaN) - (first?.heapMb ?? Number.NaN),
        10,
        'what the soak allows in an hour of music',
      ),
      visitHeapMb: byVisit('heapMb'),
      visitNodes: byVisit('nodes'),
      visitListeners: byVisit('listeners'),
    };
  });
