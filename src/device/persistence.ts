/** What the device says about how long it keeps things; null where it does not say. */
interface Answer {
  readonly lasting: boolean | null;
  readonly usage: number | null;
  readonly quota: number | null;
}

/** Asks the browser's storage manager; a browser without one gives nulls. */
export function createPersistence(manager: StorageManager | undefined): {
  readonly state: () => Promise<Answer>;
  readonly ask: () => Promise<Answer>;
} {
  const state = async (): Promise<Answer> => {
    const [lasting, estimate] = await Promise.all([
      manager?.persisted?.().catch(() => null) ?? null,
      manager?.estimate?.().catch(() => null) ?? null,
    ]);
    return { lasting, usage: estimate?.usage ?? null, quota: estimate?.quota ?? null };
  };
  return {
    state,
    ask: async () => {
      await manager?.persist?.().catch(() => false);
      return state();
    },
  };
}
