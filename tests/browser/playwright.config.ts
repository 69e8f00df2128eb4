import { defineConfig } from '@playwright/test';
import { BROWSER_ARGUMENTS, findBrowser } from '../scripts/find-browser';
import { freePort } from '../scripts/free-port';

/**
 * Real-browser tests against the built page in dist/ (run `npm run build` first, or `npm run test:browser`).
 * BROWSER_TEST_PORT and BROWSER_TEST_DIST choose another port or build, so that several runs can share one work tree; BROWSER_TEST_REPORT
 * names the report in test-results/.
 */
process.env.BROWSER_TEST_PORT ??= String(await freePort());
const port = process.env.BROWSER_TEST_PORT;
const fullTrace = process.env.BROWSER_TEST_TRACE !== undefined;
const dist = process.env.BROWSER_TEST_DIST ?? 'dist';
const address = `http://127.0.0.1:${port}/`;

/** Tests in which music plays and is listened to: one at a time. All others run two at a time: three are no faster on two cores (tried), and miss their times. */
const IN_TIME = ['**/audio/sound.spec.ts', '**/listening*.spec.ts', '**/whole-path.spec.ts', '**/in-time*.spec.ts'];

export default defineConfig({
  testDir: '.',
  outputDir: `../../test-results/${process.env.BROWSER_TEST_REPORT ?? 'browser'}`,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  workers: 2,
  forbidOnly: !!process.env.CI,
  projects: [
    { name: 'in time', testMatch: IN_TIME, workers: 1 },
    { name: 'others', testMatch: '**/*.spec.ts', testIgnore: IN_TIME, fullyParallel: true },
  ],
  reporter: [['list'], ['json', { outputFile: `../../test-results/${process.env.BROWSER_TEST_REPORT ?? 'browser'}.json` }]],
  use: {
    baseURL: address,
    browserName: 'chromium',
    headless: true,
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
    acceptDownloads: true,
    // A service worker would answer what a test wants to answer itself; offline.spec.ts lets it work.
    serviceWorkers: 'block',
    // What a failed test did and asked for; with BROWSER_TEST_TRACE also the page before and after every step, which is slow (251 against 221 s once).
    trace: { mode: 'retain-on-failure', screenshots: fullTrace, snapshots: fullTrace, sources: fullTrace },
    screenshot: 'only-on-failure',
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
