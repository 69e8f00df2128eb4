import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { ArrangeOptions } from '../music/score';
import { failed, ok, type Result } from '../vocabulary';
import { findChromium } from './find-chromium';
import { serveFolder } from './serve-folder';

/** Prints lesson sheets with an installed browser over the built page. */
export interface SheetPrinter {
  /** The sheet of a chart under these options as a PDF file. */
  print(chartText: string, options: ArrangeOptions): Promise<Uint8Array>;
  close(): Promise<void>;
}

/** What the page hands to programs that drive it: its desk, on the element that holds the page. */
interface DeskOfPage {
  run(command: unknown): void;
  readonly desk: { getState(): { readonly text: string; readonly music: unknown; readonly trouble: string | null } };
}

const ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-sync',
];
/** The built page, seen from here. */
const BUILT = '../../dist/';
const PAGE = fileURLToPath(new URL(BUILT, import.meta.url));

/** Opens the printer; what is missing on this machine is one line that says what to install. `page` is the folder of the built page. */
export async function openSheetPrinter(page = PAGE): Promise<Result<SheetPrinter, string>> {
  const path = findChromium(process.env);
  if (path === null) return failed('no browser to print with: install Chromium or Chrome, or set CHROMIUM_PATH to one');
  if (!existsSync(join(page, 'index.html'))) return failed('the page is not built: run npm run build first');
  const { chromium } = await import('playwright-core').catch(() => ({ chromium: null }));
  if (chromium === null) return failed('playwright-core is not installed: run npm install');
  const server = await serveFolder(page);
  try {
    const browser = await chromium.launch({ executablePath: path, args: ARGUMENTS });
    // A browser without memory: nothing that somebody typed there is read or written.
    const tab = await browser.newPage({ locale: 'en-GB', viewport: { width: 1280, height: 900 } });
    await tab.addInitScript('globalThis.__name ??= (target) => target;');
    await tab.goto(`${server.address}#/chart`);
    await tab.waitForFunction(() => 'desk' in (document.getElementById('page') ?? {}));
    return ok({
      async print(text, options) {
        await tab.evaluate(() => {
          location.hash = '#/chart';
        });
        await tab.evaluate(
          ([chart, settings]) => {
            const desk = (document.getElementById('page') as unknown as { desk: DeskOfPage }).desk;
            desk.run({ kind: 'new chart' });
            desk.run({ kind: 'type', text: chart });
            desk.run({ kind: 'set', settings });
          },
          [text, settingsOf(options)] as const,
        );
        // A long chart is read when typing pauses.
        await tab.waitForTimeout(400);
        await tab.evaluate(
          (settings) => (document.getElementById('page') as unknown as { desk: DeskOfPage }).desk.run({ kind: 'set', settings }),
          settingsOf(options),
        );
        await tab.evaluate(() => {
          location.hash = '#/sheet';
        });
        await tab.waitForFunction(standing, undefined, { timeout: 60_000 });
        await tab.evaluate(() => document.fonts.ready.then(() => true));
        return tab.pdf({ preferCSSPageSize: true, printBackground: true });
      },
      async close() {
        await browser.close();
        server.close();
      },
    });
  } catch (error) {
    server.close();
    return failed(
      `the browser at ${path} does not start: ${error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error)}`,
    );
  }
}

/** Runs in the page: true once every system of the sheet is engraved. Pages far from the window wait for the event that comes before printing. */
function standing(): boolean {
  window.dispatchEvent(new Event('beforeprint'));
  const pages = document.querySelector('[data-sheet-page], .sheet-page');
  const systems = [...document.querySelectorAll('.sheet .system')];
  const blank = document.querySelector('.sheet-block:empty') !== null || systems.some((system) => system.querySelector('svg') === null);
  return pages !== null && systems.length > 0 && !blank;
}

/** The page's settings for the options of the command line; what was not asked for stays as the chart says. */
function settingsOf({ closed, level, vampPasses: _, pickup: __, range: ___, ...same }: ArrangeOptions): Record<string, unknown> {
  return {
    ...same,
    level: level ?? 'by section',
    round: closed === false ? 'once, then end' : 'round and round',
  };
}
