/**
 * How quick the page feels, in Chromium with the processor slowed four times (`npm run bench -- --only face`): largest contentful
 * paint, cumulative layout shift over loading and a session of use, interaction to next paint while playing, and the playhead on a chart of 128 bars. The
 * metrics are those of the Web Vitals (W3C Largest Contentful Paint, Layout Instability, Event Timing); an interaction counts as the
 * longest of its events, and the worst interaction is given (fewer than fifty interactions: the 98th percentile is the maximum).
 */
import type { Browser, Page } from '@playwright/test';
import { benchChart } from './bench-chart';
import { onBuiltPage } from './built-page';
import { median, ofBudget, type Results } from './measure';

const SLOWDOWN = 4;
const LOADS = 5;
/** Changed while it plays, each several times. */
const CHANGES = ['level', 'direction', 'tempo', 'loop'] as const;
type Change = (typeof CHANGES)[number];

/** Runs in the page before its own code; as text, so that no tool rewrites it. */
const OBSERVE = `
  const seen = { lcp: 0, cls: 0, events: [], frames: [], commits: 0 };
  window.benchSeen = seen;
  const watch = (type, take, more = {}) =>
    new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type, buffered: true, ...more });
  watch('largest-contentful-paint', (entry) => { seen.lcp = entry.startTime; });
  // The largest session window: shifts less than a second apart, five seconds at most.
  const shifts = { from: 0, last: -1e9, sum: 0 };
  watch('layout-shift', (entry) => {
    if (entry.hadRecentInput) return;
    if (entry.startTime - shifts.last > 1000 || entry.startTime - shifts.from > 5000) { shifts.from = entry.startTime; shifts.sum = 0; }
    shifts.last = entry.startTime;
    shifts.sum += entry.value;
    seen.cls = Math.max(seen.cls, shifts.sum);
  });
  watch('event', (entry) => { if (entry.interactionId) seen.events.push([entry.interactionId, entry.duration]); }, { durationThreshold: 16 });
  const ask = window.requestAnimationFrame.bind(window);
  let frame = 0;
  window.requestAnimationFrame = (act) => ask((now) => {
    const from = performance.now();
    act(now);
    const spent = performance.now() - from;
    if (now !== frame) { seen.frames.push(0); frame = now; }
    seen.frames[seen.frames.length - 1] += spent;
  });
  const nothing = () => undefined;
  window.__REACT_DEVTOOLS_GLOBAL_HOOK__ = { supportsFiber: true, renderers: new Map(), isDisabled: false, checkDCE: nothing, inject: () => 1,
    onScheduleFiberRoot: nothing, onCommitFiberUnmount: nothing, onPostCommitFiberRoot: nothing, onCommitFiberRoot: () => { seen.commits += 1; } };
`;

interface Seen {
  readonly lcp: number;
  readonly cls: number;
  readonly events: readonly (readonly [number, number])[];
  readonly frames: readonly number[];
  readonly commits: number;
}
const seenBy = (page: Page) => page.evaluate('window.benchSeen') as Promise<Seen>;
const forget = (page: Page) => page.evaluate('Object.assign(window.benchSeen, { events: [], frames: [], commits: 0 }), null');

const sorted = (values: readonly number[]) => [...values].sort((a, b) => a - b);
const share = (values: readonly number[], part: number) =>
  sorted(values)[Math.min(values.length - 1, Math.floor(values.length * part))] ?? 0;
const round = (value: number, digits = 1) => Number(value.toFixed(digits));

/** The longest event of each interaction. */
function interactions({ events }: Seen): number[] {
  const longest = new Map<number, number>();
  for (const [id, duration] of events) longest.set(id, Math.max(longest.get(id) ?? 0, duration));
  return [...longest.values()];
}

async function slowPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: 'en-GB', serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.addInitScript({ content: OBSERVE });
  const devtools = await context.newCDPSession(page);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
  return page;
}

const transport = (page: Page) => page.getByRole('region', { name: 'Transport' });
const ACTS: Readonly<Record<Change, (page: Page) => Promise<void>>> = {
  level: (page) => transport(page).getByRole('button', { name: 'Busier' }).click(),
  direction: (page) =>
    transport(page)
      .getByRole('button', { name: /^Direction/ })
      .click(),
  tempo: (page) => transport(page).getByRole('button', { name: 'Faster', exact: true }).click(),
  loop: (page) => transport(page).getByRole('group', { name: 'Loop' }).getByRole('button').first().click(),
};

async function startPlaying(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.locator('.panel[data-now]').first().waitFor({ timeout: 30_000 });
}

/** Paint, shift, requests and bytes of one load with an empty cache, and the interactions of a session. */
async function measureSession(browser: Browser, address: string) {
  const page = await slowPage(browser);
  let requests = 0;
  let bytes = 0;
  page.on('requestfinished', async (request) => {
    requests += 1;
    bytes += await request.sizes().then(({ responseBodySize, responseHeadersSize }) => responseBodySize + responseHeadersSize);
  });
  await page.goto(address);
  await page.waitForTimeout(2500);
  const { lcp } = await seenBy(page);
  const load = { requests, bytes };
  await startPlaying(page);
  const spans: Record<Change, number[]> = { level: [], direction: [], tempo: [], loop: [] };
  for (const change of CHANGES) {
    await forget(page);
    for (let time = 0; time < 3; time += 1) {
      await ACTS[change](page);
      await page.waitForTimeout(600);
    }
    spans[change].push(...interactions(await seenBy(page)));
  }
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  for (const place of ['Chart', 'Sheet', 'Drills', 'Journal', 'Practise']) {
    await page.getByRole('link', { name: place, exact: true }).click();
    await page.waitForTimeout(700);
  }
  const { cls } = await seenBy(page);
  await page.context().close();
  return { lcp, cls, load, spans };
}

/** The playhead over 128 bars: frames a second, milliseconds of script a frame, commits of React a frame. */
async function measurePlayhead(browser: Browser, address: string) {
  const page = await slowPage(browser);
  await page.goto(`${address}#/chart`);
  await page.getByRole('textbox', { name: 'Chart text' }).fill(benchChart(128, 7));
  await page.waitForTimeout(1500);
  await page.getByRole('link', { name: 'Practise', exact: true }).click();
  await startPlaying(page);
  await page.waitForTimeout(1000);
  await forget(page);
  const span = 8000;
  await page.waitForTimeout(span);
  const { frames, commits } = await seenBy(page);
  await page.context().close();
  return {
    framesPerSecond: round((frames.length * 1000) / span),
    scriptP95Ms: round(share(frames, 0.95), 2),
    commitsPerFrame: round(commits / Math.max(1, frames.length), 4),
  };
}

/** Everything above, medians over several loads, each beside its limit. */
export const measureFace = (): Promise<Results> =>
  onBuiltPage(async (browser, address) => {
    const sessions: Awaited<ReturnType<typeof measureSession>>[] = [];
    for (let time = 0; time < LOADS; time += 1) sessions.push(await measureSession(browser, address));
    const spansOf = (change: Change) => sessions.flatMap(({ spans }) => spans[change]);
    const load = sessions[0]?.load ?? { requests: Number.NaN, bytes: Number.NaN };
    const { framesPerSecond, scriptP95Ms, commitsPerFrame } = await measurePlayhead(browser, address);
    const lcp = sessions.map((session) => session.lcp);
    return {
      faceSlowdown: SLOWDOWN,
      lcpMs: ofBudget(median(lcp), 1200, 'our own limit; 2.5 s counts as good (Web Vitals)'),
      lcpWorstMs: Math.max(...lcp),
      cls: ofBudget(Math.max(...sessions.map((session) => session.cls)), 0.02, 'our own limit; 0.1 counts as good (Web Vitals)'),
      ...Object.fromEntries(
        CHANGES.flatMap((change) => [
          [`${change}InpMs`, ofBudget(Math.max(...spansOf(change)), 100, 'what is felt as at once (R. B. Miller, AFIPS 1968)')],
          [`${change}InpMedianMs`, median(spansOf(change))],
        ]),
      ),
      loadRequests: load.requests,
      loadBytes: load.bytes,
      playhead128FramesPerSecond: framesPerSecond,
      playhead128ScriptP95Ms: ofBudget(scriptP95Ms, 4, 'a quarter of a frame'),
      playhead128CommitsPerFrame: commitsPerFrame,
    };
  });
