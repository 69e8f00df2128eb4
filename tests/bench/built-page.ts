import { existsSync } from 'node:fs';
import { type Browser, chromium } from '@playwright/test';
import { preview } from 'vite';
import { BROWSER_ARGUMENTS, findBrowser } from '../scripts/find-browser';
import { freePort } from '../scripts/free-port';

/** Measures on the built page, served from `dist` to a Chromium of its own; both end with it. Throws where nothing was built. */
export async function onBuiltPage<Measured>(
  measure: (browser: Browser, address: string) => Promise<Measured>,
  dist = process.env.BROWSER_TEST_DIST ?? 'dist',
): Promise<Measured> {
  if (!existsSync(`${dist}/index.html`)) throw new Error(`no ${dist}/index.html: run npm run build first`);
  const server = await preview({
    logLevel: 'silent',
    build: { outDir: dist },
    preview: { host: '127.0.0.1', port: await freePort(), strictPort: true },
  });
  const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGUMENTS });
  try {
    return await measure(browser, server.resolvedUrls?.local[0] ?? '');
  } finally {
    await browser.close();
    await server.close();
  }
}

/** The TypeScript runner wraps inner functions in a helper that the page does not have: run before the page's own code. */
export const RUNNER_HELPER = 'globalThis.__name ??= (target) => target;';
