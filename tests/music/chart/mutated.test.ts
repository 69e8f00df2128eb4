import { expect, it } from 'vitest';
import { fuzzCharts } from '../../fuzz/fuzz-charts';

it('E12: 10,000 mutated charts neither throw nor hang, and what is still a chart comes back the same', { timeout: 120_000 }, () => {
  const report = fuzzCharts({ seed: 12, count: 1000, mutations: 10 });
  expect(report.failures).toEqual([]);
  expect(report.mutated).toBe(10_000);
  expect(report.stillCharts).toBeGreaterThan(500);
});
