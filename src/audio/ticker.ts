/** Calls back at a steady rate, hidden or not; the callback reads the audio clock and never counts on the rate. */
export interface Ticker {
  start(everyMs: number): void;
  pause(): void;
}

/** A ticker on our own worker (same origin, so a strict content policy allows it), or on this page's timers where workers fail. */
export function createTicker(onTick: () => void): Ticker {
  let timer: ReturnType<typeof setInterval> | null = null;
  let worker: Worker | null = null;
  let everyMs = 0;
  const fallBack = () => {
    worker = null;
    if (timer !== null) clearInterval(timer);
    timer = everyMs > 0 ? setInterval(onTick, everyMs) : null;
  };
  try {
    worker = new Worker(new URL('./tick-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = onTick;
    worker.onerror = fallBack;
  } catch {
    worker = null;
  }
  const run = (ms: number) => {
    everyMs = ms;
    if (worker === null) fallBack();
    else worker.postMessage(ms);
  };
  return { start: run, pause: () => run(0) };
}
