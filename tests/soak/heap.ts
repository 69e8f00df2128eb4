import type { CDPSession } from '@playwright/test';

/** Megabytes of the page's heap after collection; the session has `Performance` enabled. */
export async function heapMb(devtools: CDPSession): Promise<number> {
  await devtools.send('HeapProfiler.collectGarbage');
  await devtools.send('HeapProfiler.collectGarbage');
  const { metrics } = await devtools.send('Performance.getMetrics');
  return (metrics.find(({ name }) => name === 'JSHeapUsedSize')?.value ?? Number.NaN) / 1e6;
}
