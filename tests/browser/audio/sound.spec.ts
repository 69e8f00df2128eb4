import type { Page } from '@playwright/test';
import { expect, test } from '@playwright/test';
import type { Bench } from './page/main';
import type { ServedPage } from './serve-page';
import { servePage } from './serve-page';

declare global {
  interface Window {
    readonly bench: Bench;
  }
}

let served: ServedPage;
test.beforeAll(async () => {
  served = await servePage();
});
test.afterAll(() => served.close());

/** Opens the page and collects what the console says in error; failed fetches are the browser's own remark and are left out. */
async function open(page: Page, hash = ''): Promise<string[]> {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' && !message.text().startsWith('Failed to load resource')) errors.push(message.text());
  });
  await page.goto(`${served.address}${hash}`);
  return errors;
}
const states = (page: Page) => page.evaluate(() => window.bench.states());

test('the sounding player keeps the contract of every player, under a policy that allows our own files alone', async ({ page }) => {
  test.setTimeout(120_000);
  const errors = await open(page);
  const clauses = await page.evaluate(() => window.bench.clauses);
  for (const [index, title] of clauses.entries()) await test.step(title, () => page.evaluate((at) => window.bench.clause(at), index));
  expect(errors).toEqual([]);
});

test('every recording begins within 2 ms of its first decoded frame and is loud enough to be heard', async ({ page }) => {
  await open(page);
  const files = await page.evaluate(() => window.bench.onsets());
  expect(files).toHaveLength(65);
  for (const { file, onset, peak } of files) {
    expect(onset, `${file} begins`).toBeLessThan(0.002);
    expect(peak, `${file} peak`).toBeGreaterThan(0.03);
    expect(peak, `${file} peak`).toBeLessThan(1);
  }
});

test('sounds come out on the exact frame they were asked for', async ({ page }) => {
  await open(page);
  const frames = [4800, 4801, 9600, 12_345, 48_000, 77_777];
  expect(await page.evaluate((asked) => window.bench.impulses(asked, null), frames)).toEqual(frames);
  expect(await page.evaluate((asked) => window.bench.impulses(asked, 60), frames)).toEqual(frames);
});

test('the full band neither clips nor hides the clave, recorded or made', async ({ page }) => {
  test.setTimeout(120_000);
  await open(page);
  for (const sounds of ['recorded', 'made'] as const) {
    const levels = await page.evaluate((which) => window.bench.levels(which, 100), sounds);
    // The knee of the ceiling is at 0.75 × 0.7 = −5.6 dB: below it nothing is shaped.
    expect(levels.all?.peak, `${sounds}: peak of all`).toBeLessThan(-5.6);
    expect(levels.all?.rms, `${sounds}: loudness of all`).toBeGreaterThan(-30);
    expect(levels.all?.rms, `${sounds}: loudness of all`).toBeLessThan(-16);
    const right = levels['piano right']?.peak ?? 0;
    expect(Math.abs((levels.clave?.peak ?? -99) - right), `${sounds}: clave beside the right hand`).toBeLessThan(6);
    expect(Math.abs((levels.bass?.peak ?? -99) - right), `${sounds}: bass beside the right hand`).toBeLessThan(8);
    expect(levels.pulse?.peak ?? 0, `${sounds}: pulse under the clave`).toBeLessThan((levels.clave?.peak ?? -99) - 3);
  }
});

test('no sum of parts passes the ceiling', async ({ page }) => {
  await open(page);
  const peak = await page.evaluate(() => window.bench.overload());
  expect(peak).toBeGreaterThan(0.8);
  expect(peak).toBeLessThan(0.98);
});

for (const holds of [true, false])
  test(`Stop is silent within 50 ms, without a click, nothing sounds later${holds ? '' : '; also as in Firefox, where no value can be held'}`, async ({
    page,
  }) => {
    if (!holds) await page.addInitScript(() => Reflect.deleteProperty(AudioParam.prototype, 'cancelAndHoldAtTime'));
    const errors = await open(page);
    for (const sounds of ['recorded', 'made'] as const) {
      const found = await page.evaluate((which) => window.bench.stopped(which), sounds);
      expect(found.before).toBeGreaterThan(0.02);
      expect(found.after).toBeLessThan(1e-5);
      expect(found.steepestDuring).toBeLessThanOrEqual(found.steepestBefore);
      expect(found.left).toBe(0);
    }
    expect(errors).toEqual([]);
  });

test('tuning bends what sounds already, by the cents asked for', async ({ page }) => {
  await open(page);
  for (const cents of [50, -50]) {
    const { before, after } = await page.evaluate((by) => window.bench.bent(by), cents);
    expect(1200 * Math.log2(after / before)).toBeGreaterThan(cents - 4);
    expect(1200 * Math.log2(after / before)).toBeLessThan(cents + 4);
  }
});

test('a muted part is silent, and the count-in sounds all the same', async ({ page }) => {
  await open(page);
  const { part, countIn } = await page.evaluate(() => window.bench.muted());
  expect(part).toBeLessThan(1e-5);
  expect(countIn).toBeGreaterThan(0.05);
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
