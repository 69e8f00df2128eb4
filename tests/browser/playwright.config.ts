import { defineConfig } from '@playwright/test';
import { BROWSER_ARGUMENTS, findBrowser } from '../scripts/find-browser';
import { freePort } from '../scripts/free-port';

/**
 * Real-browser tests against the built page in dist/ (run `npm run build` first, or `npm run test:browser`).
 * BROWSER_TEST_PORT and BROWSER_TEST_DIST choose another port or build, so that several runs can share one work tree.
 */
process.env.BROWSER_TEST_PORT ??= String(await freePort());
const port = process.env.BROWSER_TEST_PORT;
const dist = process.env.BROWSER_TEST_DIST ?? 'dist';
const address = `http://127.0.0.1:${port}/`;

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.spec.ts',
  outputDir: '../../test-results/browser',
  timeout: 60_000,
  expect: { timeout: 10_000 },
  workers: 1,
  forbidOnly: !!process.env.CI,
  reporter: [['list'], ['json', { outputFile: '../../test-results/browser.json' }]],
  use: {
    baseURL: address,
    browserName: 'chromium',
    headless: true,
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
    acceptDownloads: true,
    // A service worker would answer what a test wants to answer itself; offline.spec.ts lets it work.
    serviceWorkers: 'block',
    trace: 'retain-on-failure',
    launchOptions: { executablePath: findBrowser(), args: BROWSER_ARGUMENTS },
  },
  webServer: {
    command: `npx vite preview --host 127.0.0.1 --port ${port} --strictPort --outDir ${dist}`,
    cwd: '../..',
    url: address,
    timeout: 30_000,
    reuseExistingServer: false,
  },
});
