/**
 * Time to first sound: the built page is opened in a browser that has never seen it, Play is pressed as soon as it can be, and
 * the milliseconds are counted from the click until the first audible frame is computed for the loudspeaker. What the sound device adds after
 * that is not in it. Needs dist/, or the build that BROWSER_TEST_DIST names.
 */
import type { Browser } from '@playwright/test';
import { onBuiltPage, RUNNER_HELPER } from './built-page';
import { median, ofBudget, type Results } from './measure';

/** Amplitude from which a frame counts as audible: 60 dB below full scale. */
const AUDIBLE = 0.001;

/** Median milliseconds from pressing Play to the first audible frame, over `runs` cold starts. Throws when nothing sounds within 10 s. */
export const measureFirstSound = (runs = 5): Promise<Results> =>
  onBuiltPage(async (browser, address) => {
    const times: number[] = [];
    for (let run = 0; run < runs; run += 1) times.push(await coldStart(browser, address));
    return {
      firstSoundMs: ofBudget(
        median(times),
        1000,
        'one second, in which the thread of thought is not broken (common practice, from memory)',
      ),
    };
  });

async function coldStart(browser: Browser, address: string): Promise<number> {
  const context = await browser.newContext();
  try {
    const page = await context.newPage();
    await page.addInitScript(RUNNER_HELPER);
    await page.addInitScript(listenForSound, AUDIBLE);
    await page.goto(address);
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await page.waitForFunction(() => 'firstSoundMs' in window, undefined, { timeout: 10_000 });
    return await page.evaluate(() => (window as unknown as { firstSoundMs: number }).firstSoundMs);
  } finally {
    await context.close();
  }
}

/** Runs in the page before its own code: taps whatever is connected to a live context's destination. */
function listenForSound(audible: number): void {
  let pressedAt: number | null = null;
  const onPress = (event: Event) => {
    pressedAt ??= event.timeStamp;
  };
  addEventListener('click', onPress, { capture: true });
  const connect = AudioNode.prototype.connect as (this: AudioNode, ...to: unknown[]) => unknown;
  const listened = new WeakSet<BaseAudioContext>();
  const listen = (node: AudioNode): void => {
    const { context } = node;
    if (!(context instanceof AudioContext) || listened.has(context)) return;
    listened.add(context);
    const probe = context.createAnalyser();
    probe.fftSize = 4096;
    connect.call(node, probe);
    const frames = new Float32Array(probe.fftSize);
    const timer = setInterval(() => {
      probe.getFloatTimeDomainData(frames);
      const first = frames.findIndex((value) => Math.abs(value) > audible);
      if (first < 0 || pressedAt === null) return;
      clearInterval(timer);
      // The last frame of the probe is the newest; the first audible one lies so much earlier.
      const found = performance.now() - ((frames.length - first) / context.sampleRate) * 1000 - pressedAt;
      Object.assign(window, { firstSoundMs: found });
    }, 4);
  };
  AudioNode.prototype.connect = function tapped(this: AudioNode, ...to: unknown[]) {
    if (to[0] instanceof AudioDestinationNode) listen(this);
    return connect.apply(this, to);
  } as typeof AudioNode.prototype.connect;
}
