/**
 * Takes the picture of the README: the Practise place in the middle of a cycle, as it is built in dist/.
 * `npx tsx tests/scripts/screenshot.ts` after a change of the look (run `npm run build` first).
 */
import { chromium } from '@playwright/test';
import { preview } from 'vite';
import { BROWSER_ARGUMENTS, findBrowser } from './find-browser';
import { freePort } from './free-port';

const PICTURE = 'public/practise.png';

const server = await preview({ logLevel: 'silent', preview: { host: '127.0.0.1', port: await freePort(), strictPort: true } });
const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGUMENTS });
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 920 }, locale: 'en-GB' });
  await page.goto(server.resolvedUrls?.local[0] ?? `http://127.0.0.1:${server.config.preview.port}/`);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  // An offbeat that rings into the next bar, in the second panel of the first card.
  await page.waitForSelector('.now-card .panel[data-now] .right-hand[data-lit]', { timeout: 20_000 });
  await page.waitForTimeout(1_200);
  await page.screenshot({ path: PICTURE });
} finally {
  await browser.close();
  await new Promise((resolve) => server.httpServer.close(resolve));
}
