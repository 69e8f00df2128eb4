/** Keeps the screen awake while it is wanted. */
export interface WakeLock {
  /** Asks for the screen to stay on, or lets it go. A refusal is no fault: the screen then sleeps as the device is set. */
  readonly want: (awake: boolean) => void;
}

/** The browser lets a lock go when the page is hidden, so it is asked for again when the page comes back. */
export function createWakeLock(page: Document, wakeLock: Pick<Navigator, 'wakeLock'>['wakeLock'] | undefined): WakeLock {
  let wanted = false;
  let held: WakeLockSentinel | null = null;

  const ask = async (): Promise<void> => {
    if (!wanted || held || !wakeLock || page.visibilityState !== 'visible') return;
    try {
      const lock = await wakeLock.request('screen');
      if (!wanted) return await lock.release();
      held = lock;
      lock.addEventListener('release', () => {
        held = null;
      });
    } catch {
      held = null;
    }
  };

  page.addEventListener('visibilitychange', () => void ask());
  return {
    want: (awake) => {
      wanted = awake;
      if (awake) void ask();
      else void held?.release().catch(() => undefined);
    },
  };
}
