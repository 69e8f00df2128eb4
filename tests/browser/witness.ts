/** What a browser test notices beside what it does: faults in the console, requests to strangers, sound, React's commits. */
import type { Page } from '@playwright/test';
import { expect } from '@playwright/test';

/** Faults and foreign requests of a page, gathered from its first moment. */
export interface Witness {
  readonly faults: readonly string[];
  readonly foreignRequests: readonly string[];
}

/** Begins to gather; `expected` are faults that the test provokes itself (a sample answered with 404, say). Call before the page opens. */
export function witness(page: Page, expected: readonly RegExp[] = []): Witness {
  const faults: string[] = [];
  const foreignRequests: string[] = [];
  const note = (text: string) => {
    if (!expected.some((pattern) => pattern.test(text))) faults.push(text);
  };
  page.on('pageerror', (error) => note(`uncaught: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') note(`console: ${message.text()} ${message.location().url}`);
  });
  page.on('request', (request) => {
    const { protocol, host } = new URL(request.url());
    const own = new URL(page.url() === 'about:blank' ? request.url() : page.url()).host;
    if (protocol.startsWith('http') && host !== own) foreignRequests.push(request.url());
  });
  return { faults, foreignRequests };
}

/** Fails unless nothing went wrong so far. */
export function expectClean({ faults, foreignRequests }: Witness) {
  expect(faults, 'errors in the console').toEqual([]);
  expect(foreignRequests, 'requests to another origin').toEqual([]);
}

interface Ears {
  readonly loudness: () => number;
  readonly contexts: AudioContext[];
}
declare global {
  interface Window {
    testEars?: Ears;
    testCommits?: { count: number };
  }
}

/**
 * Lets a test hear: everything that is connected to a sound device's output is also led to a meter. Call before the page
 * opens; the page's own code is not changed and knows nothing of it.
 */
export async function growEars(page: Page) {
  await page.addInitScript(() => {
    const meters: AnalyserNode[] = [];
    const contexts: AudioContext[] = [];
    const connect = AudioNode.prototype.connect as (this: AudioNode, ...args: unknown[]) => AudioNode;
    AudioNode.prototype.connect = function (this: AudioNode, ...args: unknown[]) {
      const [target] = args;
      if (target instanceof AudioDestinationNode && target.context instanceof AudioContext) {
        if (!contexts.includes(target.context)) contexts.push(target.context);
        const meter = target.context.createAnalyser();
        meter.fftSize = 2048;
        connect.call(this, meter);
        meters.push(meter);
      }
      return connect.apply(this, args);
    } as typeof AudioNode.prototype.connect;
    const loudnessOf = (meter: AnalyserNode) => {
      const samples = new Float32Array(meter.fftSize);
      meter.getFloatTimeDomainData(samples);
      return Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / samples.length);
    };
    window.testEars = { contexts, loudness: () => Math.max(0, ...meters.map(loudnessOf)) };
  });
}

/** Root mean square of the last 2,048 frames sent to the output; 0 is silence. */
export const loudness = (page: Page) => page.evaluate(() => window.testEars?.loudness() ?? 0);

/** The largest loudness met during `forMs`, read every 10 ms. */
export async function loudestDuring(page: Page, forMs: number): Promise<number> {
  return page.evaluate(async (duration) => {
    let loudest = 0;
    const until = performance.now() + duration;
    while (performance.now() < until) {
      loudest = Math.max(loudest, window.testEars?.loudness() ?? 0);
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
    return loudest;
  }, forMs);
}

/** States of the sound devices that the page opened. */
export const soundDeviceStates = (page: Page) => page.evaluate(() => window.testEars?.contexts.map(({ state }) => state) ?? []);

/**
 * Counts what React commits to the page, through the hook that React itself calls after every commit (made for its
 * developer tools, called in production builds too). Call before the page opens.
 */
export async function countCommits(page: Page) {
  await page.addInitScript(() => {
    const commits = { count: 0 };
    window.testCommits = commits;
    const nothing = () => undefined;
    Object.defineProperty(window, '__REACT_DEVTOOLS_GLOBAL_HOOK__', {
      value: {
        supportsFiber: true,
        renderers: new Map(),
        isDisabled: false,
        checkDCE: nothing,
        inject: () => 1,
        onScheduleFiberRoot: nothing,
        onCommitFiberUnmount: nothing,
        onPostCommitFiberRoot: nothing,
        onCommitFiberRoot: () => {
          commits.count += 1;
        },
      },
    });
  });
}

/** Commits so far, and the animation frames drawn and commits made during the next `forMs`. */
export async function commitsDuring(
  page: Page,
  forMs: number,
): Promise<{ readonly before: number; readonly commits: number; readonly frames: number }> {
  return page.evaluate(async (duration) => {
    const counter = window.testCommits;
    if (!counter) throw new Error('commits are not counted: call countCommits before the page opens');
    const before = counter.count;
    let frames = 0;
    const until = performance.now() + duration;
    while (performance.now() < until) {
      await new Promise((resolve) => requestAnimationFrame(resolve));
      frames += 1;
    }
    return { before, commits: counter.count - before, frames };
  }, forMs);
}

/** Lets Play begin with the music at once, where the count-in is not what is looked at. */
export async function withoutCountIn(page: Page) {
  await page.waitForFunction(() => 'desk' in (document.getElementById('page') ?? {}));
  await page.evaluate(() => {
    const { desk } = document.getElementById('page') as unknown as { desk: { run: (command: unknown) => void } };
    desk.run({ kind: 'set', settings: { countInBars: 0 } });
  });
}
