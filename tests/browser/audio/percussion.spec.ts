import { expect, test } from '@playwright/test';
import type { ServedPage } from './serve-page';
import { servePage } from './serve-page';

let served: ServedPage;
test.beforeAll(async () => {
  served = await servePage();
});
test.afterAll(() => served.close());

test('percussion stands beside the band: every stroke is heard, none sticks out, and the clave is not hidden', async ({ page }) => {
  test.setTimeout(120_000);
  await page.goto(served.address);
  for (const sounds of ['recorded', 'made'] as const) {
    const strokes = await page.evaluate((which) => window.bench.strokes(which), sounds);
    const levels = await page.evaluate((which) => window.bench.levels(which, 100), sounds);
    const clave = levels.clave?.peak ?? -99;
    for (const { stroke, peak } of strokes) {
      expect(peak, `${sounds}: ${stroke}`).toBeGreaterThan(-38);
      expect(peak, `${sounds}: ${stroke} beside the clave`).toBeLessThan(clave - 3);
    }
    for (const role of ['verse', 'coro'] as const) {
      const { kit, all } = await page.evaluate(([which, part]) => window.bench.percussion(which, 100, part), [sounds, role] as const);
      expect(Math.abs(kit.peak - (levels['piano right']?.peak ?? 0)), `${sounds}: ${role} beside the right hand`).toBeLessThan(6);
      expect(all.peak, `${sounds}: peak of all with the ${role}`).toBeLessThan(-5.6);
    }
  }
});
