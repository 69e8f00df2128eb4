import { defineConfig } from '@playwright/test';
import { freePort } from '../scripts/free-port';
import { findFirefox, findWebKit, NO_FIREFOX, NO_WEBKIT } from './find-engines';

/**
 * The job in other engines, against the built page in dist/: `npm run test:engines`. Firefox by Playwright, WebKitGTK by WebDriver.
 * Not part of `npm test`, which must run where there is one browser only.
 */
process.env.ENGINES_PORT ??= String(await freePort());
const port = process.env.ENGINES_PORT;
const dist = process.env.ENGINES_DIST ?? 'dist';
const address = `http://127.0.0.1:${port}/`;
const firefox = findFirefox();
const webkit = findWebKit();
if (firefox === null) console.log(NO_FIREFOX);
if (webkit === null) console.log(NO_WEBKIT);

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results/engines',
  globalSetup: './quiet-sink.ts',
  timeout: 90_000,
  expect: { timeout: 15_000 },
  workers: 1,
  reporter: [['list'], ['json', { outputFile: '../../test-results/engines.json' }]],
  use: { baseURL: address, viewport: { width: 1280, height: 800 }, locale: 'en-GB', acceptDownloads: true },
  projects: [
    ...(firefox === null
      ? []
      : [
          {
            name: 'firefox',
            testMatch: 'firefox.spec.ts',
            use: {
              browserName: 'firefox' as const,
              channel: 'moz-firefox',
              launchOptions: { executablePath: firefox, firefoxUserPrefs: { 'media.autoplay.default': 0 } },
            },
          },
        ]),
    ...(webkit === null ? [] : [{ name: 'webkit', testMatch: 'webkit.spec.ts' }]),
  ],
  webServer: {
    command: `npx vite preview --host 127.0.0.1 --port ${port} --strictPort --outDir ${dist}`,
    cwd: '../..',
    url: address,
    timeout: 30_000,
    reuseExistingServer: false,
  },
});
