import { chromium } from '@playwright/test';
import { build, type Rollup } from 'vite';
import { BROWSER_ARGUMENTS, findBrowser } from '../scripts/find-browser';
import { heapMb } from './heap';
import type { SoakReport } from './soak-player';

/** The simulated run in a page, and how far the page's memory grew over it, after collection. */
export type ChromiumSoak = SoakReport & { readonly heapGrowthMb: number };

/** The scheduler with the clock that its owner turns, as one script that a page can run. */
async function soakScript(): Promise<string> {
  const made = await build({
    configFile: false,
    logLevel: 'silent',
    build: { write: false, lib: { entry: 'tests/soak/soak-player.ts', formats: ['iife'], name: 'soak', fileName: 'soak' } },
  });
  const [{ output }] = [made].flat() as unknown as [Rollup.RollupOutput];
  return output[0].code;
}

/** Plays `minutes` of simulated time in a page of Chromium, as `soakPlayer` does in Node; a short run before it is not counted. */
export async function soakInChromium(minutes: number, seed: number): Promise<ChromiumSoak> {
  const script = await soakScript();
  const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGUMENTS });
  try {
    const page = await browser.newPage();
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('Performance.enable');
    await page.addScriptTag({ content: script });
    const run = (of: number) => page.evaluate(`soak.soakPlayer(${of}, ${seed})`) as Promise<SoakReport>;
    await run(1);
    const before = await heapMb(devtools);
    const report = await run(minutes);
    return { ...report, heapGrowthMb: (await heapMb(devtools)) - before };
  } finally {
    await browser.close();
  }
}
