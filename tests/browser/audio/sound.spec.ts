import type { Page } from '@playwright/test';
import { expect, test } from '@playwright/test';
import { openPage, type ServedPage, servePage } from './serve-page';

let served: ServedPage;
test.beforeAll(async () => {
  served = await servePage();
});
test.afterAll(() => served.close());

/** Opens the page; gives what its console says in error. */
const open = (page: Page, hash = '') => openPage(page, `${served.address}${hash}`);
const states = (page: Page) => page.evaluate(() => window.bench.states());

test('the sounding player keeps the contract of every player, under a policy that allows our own files alone', async ({ page }) => {
  test.setTimeout(120_000);
  const errors = await open(page);
  const clauses = await page.evaluate(() => window.bench.clauses);
  for (const [index, title] of clauses.entries()) await test.step(title, () => page.evaluate((at) => window.bench.clause(at), index));
  expect(errors).toEqual([]);
});

for (const [what, answer] of [
  ['are not there', { status: 404, body: '' }],
  ['are web pages', { status: 200, contentType: 'text/html', body: '<!doctype html>' }],
  ['are broken', { status: 200, contentType: 'audio/mpeg', body: 'no sound' }],
] as const)
  test(`Play sounds within a second when the recordings ${what}, and says which one is missing`, async ({ page }) => {
    await page.route('**/samples/*.mp3', (route) => route.fulfill(answer));
    const errors = await open(page);
    await page.evaluate(() => window.bench.play());
    await expect.poll(async () => (await states(page)).sounds, { timeout: 1000, intervals: [50] }).toBeGreaterThan(0);
    await expect
      .poll(async () => (await states(page)).sound)
      .toMatchObject({ kind: 'running', samples: 'synthesised', missing: expect.stringContaining('.mp3') });
    await page.unroute('**/samples/*.mp3');
    await page.evaluate(() => window.bench.play());
    await expect.poll(async () => (await states(page)).sound).toMatchObject({ kind: 'running', samples: 'ready' });
    expect(errors).toEqual([]);
  });

test('Play does not wait for recordings that never come', async ({ page }) => {
  await page.route('**/samples/*.mp3', () => undefined);
  await open(page);
  await page.evaluate(() => window.bench.play());
  await expect.poll(async () => (await states(page)).sounds, { timeout: 1000, intervals: [50] }).toBeGreaterThan(0);
  expect((await states(page)).sound).toEqual({ kind: 'running', samples: 'loading' });
  await page.unrouteAll({ behavior: 'ignoreErrors' });
});

test('music asked for without a gesture waits, says so, and begins at the next touch', async ({ page }) => {
  const errors = await open(page, '#at-once');
  // Evaluating counts as a gesture, so the page is left alone until it has given up.
  await page.waitForTimeout(1500);
  await page.locator('#press').click();
  await expect.poll(async () => (await states(page)).transport).toBe('playing');
  const history = await page.evaluate(() => window.bench.history());
  expect(history.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['starting', 'blocked', 'running']));
  expect(history.find(({ kind }) => kind === 'blocked')).toEqual({ kind: 'blocked', reason: 'the browser waits for a touch or a key' });
  expect((await states(page)).sound).toMatchObject({ kind: 'running' });
  expect(errors).toEqual([]);
});

/** Gives the page audio contexts that a test can interrupt, for good or until they are resumed, as a call or a lock screen does. */
function interruptible(): void {
  const Native = window.AudioContext;
  const made: Interruptible[] = [];
  class Interruptible extends Native {
    mood: 'well' | 'interrupted' | 'dead' = 'well';
    constructor(options?: AudioContextOptions) {
      super(options);
      made.push(this);
    }
    override get state(): AudioContextState {
      return this.mood === 'well' ? super.state : ('interrupted' as AudioContextState);
    }
    override async resume(): Promise<void> {
      if (this.mood === 'dead') return;
      const was = this.mood;
      this.mood = 'well';
      await super.resume();
      if (was !== 'well') this.dispatchEvent(new Event('statechange'));
    }
    async interrupt(mood: 'interrupted' | 'dead') {
      await super.suspend();
      this.mood = mood;
      this.dispatchEvent(new Event('statechange'));
    }
  }
  Object.assign(window, { AudioContext: Interruptible, contexts: made });
}
type Contexts = { readonly contexts: readonly { interrupt(mood: string): Promise<void> }[] };

for (const mood of ['interrupted', 'dead'] as const)
  test(`music whose sound was ${mood === 'dead' ? 'lost for good goes on in a new context' : 'interrupted keeps its place'} at the next touch`, async ({
    page,
  }) => {
    await page.addInitScript(interruptible);
    const errors = await open(page);
    await page.evaluate(() => window.bench.play());
    await expect.poll(async () => (await states(page)).transport).toBe('playing');
    await page.waitForTimeout(800);
    await page.evaluate((how) => (window as unknown as Contexts).contexts[0]?.interrupt(how), mood);
    const blocked = await states(page);
    expect(blocked).toMatchObject({ sound: { kind: 'blocked', reason: 'a call or another program has taken it' }, transport: 'playing' });
    await page.waitForTimeout(600);
    expect(Math.abs(((await states(page)).heard ?? 0) - (blocked.heard ?? 0))).toBeLessThan(400);
    await page.locator('#press').click();
    await expect.poll(async () => (await states(page)).sound).toMatchObject({ kind: 'running' });
    await expect.poll(async () => (await states(page)).sounds).toBeGreaterThan(blocked.sounds);
    expect(await page.evaluate(() => (window as unknown as Contexts).contexts.length)).toBe(mood === 'dead' ? 2 : 1);
    expect(errors).toEqual([]);
  });

test('a browser without sound says so in one sentence and throws nothing', async ({ page }) => {
  await page.addInitScript(() => {
    for (const name of ['AudioContext', 'webkitAudioContext', 'OfflineAudioContext']) Reflect.deleteProperty(window, name);
  });
  const errors = await open(page);
  await page.evaluate(() => window.bench.play());
  expect((await states(page)).sound).toEqual({ kind: 'blocked', reason: 'this browser offers no sound to this page' });
  await page.evaluate(() => window.bench.stop());
  expect((await states(page)).transport).toBe('stopped');
  expect(errors).toEqual([]);
});

test('playing in one tab stops the other', async ({ context }) => {
  const [first, second] = [await context.newPage(), await context.newPage()];
  await open(first);
  await open(second);
  await first.evaluate(() => window.bench.play());
  await expect.poll(async () => (await states(first)).transport).toBe('playing');
  await second.evaluate(() => window.bench.play());
  await expect.poll(async () => (await states(first)).transport).toBe('stopped');
  await expect.poll(async () => (await states(second)).transport).toBe('playing');
});

test('a hidden page looks further ahead and loses nothing', async ({ page }) => {
  await open(page);
  await page.evaluate(() => window.bench.play());
  await expect.poll(async () => (await states(page)).transport).toBe('playing');
  await page.evaluate(() => {
    Object.defineProperty(document, 'hidden', { configurable: true, get: () => true });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  expect(await page.evaluate(() => window.bench.reach())).toBeGreaterThan(1.1);
});

test('a key sounds as long as it is held', async ({ page }) => {
  await open(page);
  const { held, after } = await page.evaluate(() => window.bench.letGo());
  expect([held > 0.003, after < held / 30], `${held} while held, then ${after}`).toEqual([true, true]);
});

test('a touched stroke sounds without starting the music', async ({ page }) => {
  const errors = await open(page);
  await page.evaluate(() => window.bench.touch());
  await expect.poll(async () => (await states(page)).sound.kind).toBe('running');
  expect(await states(page)).toMatchObject({ transport: 'stopped', sounds: 0, heard: null });
  expect(errors).toEqual([]);
});
