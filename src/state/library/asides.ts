import type { StoreApi } from 'zustand/vanilla';
import type { LibraryParts, LibraryState } from './parts';

/** What can be done with records that were put aside. */
export interface Asides {
  readonly meetAsides: () => Promise<void>;
  /** Hands one out as a file, untouched. */
  readonly saveAside: (key: string) => Promise<void>;
  readonly dropAside: (key: string) => Promise<void>;
}

const PREFIX = 'quarantine/';

/** Lists, hands out and drops the records that were put aside. */
export function createAsides({ desk, storage, archive, saver }: LibraryParts, store: StoreApi<LibraryState>): Asides {
  const meetAsides = async (): Promise<void> => {
    const records = await archive.all().catch(() => new Map<string, string>());
    const asides = [...records]
      .filter(([key]) => key.startsWith(PREFIX))
      .map(([key, text]) => ({ key: key.slice(PREFIX.length), length: text.length }));
    store.setState({ asides });
  };
  return {
    meetAsides,
    saveAside: async (key) => {
      const found = await storage.read(PREFIX + key);
      if (found.kind === 'found')
        saver.save(`${key.replace(/[^\w.-]+/g, '-')}.txt`, 'text/plain;charset=utf-8', new TextEncoder().encode(found.text));
    },
    dropAside: async (key) => {
      await archive.remove([PREFIX + key]);
      desk.desk.setState({ putAside: desk.desk.getState().putAside.filter((name) => name !== key) });
      await meetAsides();
    },
  };
}
