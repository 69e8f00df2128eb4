/** The page without a server: kept by its service worker below any path, updated only on the player's word, and switched off again. */
import { createReadStream, existsSync, readFileSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { transformWithOxc } from 'vite';
import { expectClean, growEars, loudness, witness } from './witness';

test.use({ serviceWorkers: 'allow' });

const DIST = process.env.BROWSER_TEST_DIST ?? 'dist';
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.mp3': 'audio/mpeg',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
};

/** A plain static server with the page below /band/practice/, that can change its worker's text and go away. */
class Site {
  /** What is served as the worker in place of the built one. */
  worker: string | null = null;
  /** A file in the middle of which the connection breaks. */
  broken: string | null = null;
  readonly #server: Server;
  constructor() {
    this.#server = createServer((request, response) => {
      const path = normalize(decodeURIComponent((request.url ?? '/').split('?')[0] ?? '/'));
      const below = /^\/band\/practice\/(.*)$/.exec(path)?.[1];
      const name = below === '' ? 'index.html' : below;
      const file = join(DIST, name ?? '');
      if (name === this.broken)
        return void response.writeHead(200, { 'Content-Length': 1_000_000 }).write('half', () => response.destroy());
      if (name === undefined || !existsSync(file) || !statSync(file).isFile()) return void response.writeHead(404).end();
      response.writeHead(200, {
        'Content-Type': TYPES[extname(file)] ?? 'text/plain',
        'Content-Security-Policy': "default-src 'self'; img-src 'self' data: blob:; style-src 'self' 'unsafe-inline'",
        'Cache-Control': 'no-cache',
      });
      if (name === 'service-worker.js' && this.worker !== null) return void response.end(this.worker);
      createReadStream(file).pipe(response);
    });
  }
  async open(): Promise<string> {
    await new Promise<void>((done) => this.#server.listen(0, '127.0.0.1', done));
    const at = this.#server.address();
    if (at === null || typeof at === 'string') throw new Error('the site has no address');
    return `http://127.0.0.1:${at.port}/band/practice/`;
  }
  async goAway(): Promise<void> {
    this.#server.closeAllConnections();
    await new Promise<void>((done) => void this.#server.close(() => done()));
  }
}

const BUILT = () => readFileSync(join(DIST, 'service-worker.js'), 'utf8');
const kept = (page: Page) =>
  page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    return navigator.serviceWorker.controller !== null;
  });
const state = (page: Page) =>
  page.evaluate(async () => ({
    workers: (await navigator.serviceWorker.getRegistrations()).length,
    caches: (await caches.keys()).length,
  }));
const updateNote = (page: Page) => page.getByText('A new version is ready.');

test('The page opens and plays with the server gone, below any path', async ({ page }) => {
  const site = new Site();
  const address = await site.open();
  await page.goto(address);
  await expect.poll(() => kept(page), { timeout: 30_000 }).toBe(true);
  await site.goAway();

  const seen = witness(page);
  await growEars(page);
  await page.reload();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect.poll(() => loudness(page), { intervals: [20], timeout: 10_000 }).toBeGreaterThan(0.001);
  await expect(page.locator('.now-card .panel[data-now]')).toHaveCount(1, { timeout: 15_000 });
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  // Every place, its files fetched for the first time, and the recordings too.
  for (const place of ['Chart', 'Sheet', 'Practise']) {
    await page.getByRole('link', { name: place, exact: true }).click();
    await expect(page.getByRole('main')).not.toBeEmpty();
  }
  expect(await page.evaluate(async () => (await fetch('samples/clave.mp3')).headers.get('content-type'))).toBe('audio/mpeg');
  await page.goto(`${address}index.html`);
  await expect(page.getByRole('button', { name: 'Play', exact: true })).toBeVisible();
  expectClean(seen);
});

test('A new version waits while the band plays, and comes only on the player’s word; nothing typed is lost', async ({ page }) => {
  const site = new Site();
  await page.goto(`${await site.open()}#/chart`);
  await expect.poll(() => kept(page), { timeout: 30_000 }).toBe(true);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Stop', exact: true })).toBeVisible();
  site.worker = BUILT().replace(/PAGE_VERSION = '\w+'/, "PAGE_VERSION = 'next'");
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
    while (!registration.waiting) await new Promise((resolve) => setTimeout(resolve, 50));
  });
  await expect(updateNote(page)).toHaveCount(0);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect(updateNote(page)).toBeVisible();
  const editor = page.getByRole('textbox', { name: 'Chart text' });
  await editor.fill('title: Typed just now\n[A]\n| C | G7 |\n');
  const loaded = page.waitForEvent('load');
  await page.getByRole('button', { name: 'Use it now' }).click();
  await loaded;
  await expect(editor).toHaveValue('title: Typed just now\n[A]\n| C | G7 |\n');
  await expect(updateNote(page)).toHaveCount(0);
  expect(await page.evaluate(async () => (await caches.keys()).some((name) => name.endsWith('next')))).toBe(true);
  await site.goAway();
});

test('An update that breaks off half-way changes nothing: the page opens and plays as before, and the update comes later', async ({
  page,
}) => {
  const site = new Site();
  const address = await site.open();
  await page.goto(address);
  await expect.poll(() => kept(page), { timeout: 30_000 }).toBe(true);
  site.worker = BUILT().replace(/PAGE_VERSION = '\w+'/, "PAGE_VERSION = 'next'");
  site.broken = 'samples/clave.mp3';
  // What became of the new worker: `redundant` when a file did not come, `installed` when all did. The browser looks for updates by itself
  // too, and tells nobody a second time of a worker that it has found: what stands in the registration counts as much as what is told.
  const update = () =>
    page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      const now = () => registration.installing ?? registration.waiting;
      const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
      let told: ServiceWorker | null | undefined;
      registration.addEventListener('updatefound', () => {
        told = now();
      });
      while (told === undefined && now() === null) {
        await registration.update().catch(() => undefined);
        await pause(200);
      }
      const worker = told ?? now();
      if (worker === null) return 'redundant';
      while (worker.state === 'parsed' || worker.state === 'installing') await pause(20);
      return worker.state;
    });
  expect(await update()).toBe('redundant');
  await expect(updateNote(page)).toHaveCount(0);
  await page.context().setOffline(true);
  await page.reload();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.locator('.now-card .panel[data-now]')).toHaveCount(1, { timeout: 15_000 });
  expect(await page.evaluate(async () => (await (await fetch('samples/clave.mp3')).arrayBuffer()).byteLength)).toBeGreaterThan(1000);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.context().setOffline(false);
  site.broken = null;
  // One that the browser began by itself, before the file could be had, may still break off.
  await expect.poll(update, { timeout: 20_000 }).toBe('installed');
  await expect(updateNote(page)).toBeVisible();
  await site.goAway();
});

test('The worker is switched off by its player, and by whoever publishes the page', async ({ page }) => {
  const site = new Site();
  const address = await site.open();
  await page.goto(`${address}#/chart`);
  await expect.poll(() => kept(page), { timeout: 30_000 }).toBe(true);
  await page.getByRole('button', { name: 'Switch it off and clear the copy' }).click();
  await expect(page.getByText('Switched off: the page needs a connection.')).toBeVisible();
  expect(await state(page)).toEqual({ workers: 0, caches: 0 });
  await page.reload();
  await expect(page.getByText('Switched off: the page needs a connection.')).toBeVisible();
  expect(await state(page)).toEqual({ workers: 0, caches: 0 });
  await page.getByRole('button', { name: 'Make it work without a connection' }).click();
  await expect.poll(() => kept(page), { timeout: 30_000 }).toBe(true);
  expect((await state(page)).caches).toBe(1);

  const source = 'src/device/workers/switch-off.ts';
  site.worker = (await transformWithOxc(readFileSync(source, 'utf8'), source)).code;
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  await expect.poll(() => state(page), { timeout: 15_000 }).toEqual({ workers: 0, caches: 0 });
  await site.goAway();
});
