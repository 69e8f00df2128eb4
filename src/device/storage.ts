import type { IDBPDatabase } from 'idb';
import type { Storage, StorageRead, StorageWrite } from '../state/ports';

/** The database, its one store, what keys in the small storage begin with, and copies there that the database has yet to confirm. */
export const DATABASE = 'contratiempo';
export const STORE = 'records';
export const PREFIX = 'contratiempo/';
export const UNCONFIRMED = 'unconfirmed/';
/** What tabs say to each other when everything was deleted; no key looks like it. */
const CLEARED = { everything: 'deleted' } as const;
/** How long the database may take to open before the smaller storage is used: an old tab can hold it up for ever. */
const OPEN_MS = 1500;

/** Somewhere on this device that keeps text by key. */
interface Shelf {
  read(key: string): Promise<string | undefined>;
  write(key: string, text: string): Promise<void>;
}

/** Parts of the browser that storage stands on; replaced in tests. */
export interface StorageParts {
  readonly openDatabase: () => Promise<IDBPDatabase>;
  /** The small storage that is used when the database cannot be opened. */
  readonly local: () => globalThis.Storage;
  /** Tells other tabs of a write. Null where the browser cannot. */
  readonly channel: BroadcastChannel | null;
  readonly persist: () => void;
}

/** The real parts: IndexedDB, localStorage and a broadcast channel. */
export function browserStorageParts(): StorageParts {
  return {
    // Fetched apart from the first screen, which does not wait for it.
    openDatabase: async () => (await import('idb')).openDB(DATABASE, 1, { upgrade: (database) => void database.createObjectStore(STORE) }),
    local: () => window.localStorage,
    channel: 'BroadcastChannel' in window ? new BroadcastChannel(DATABASE) : null,
    persist: () => void navigator.storage?.persist?.().catch(() => false),
  };
}

/** Keeps records in IndexedDB, or in localStorage where the database is refused. Every failure comes back as `refused` with the browser's own reason. */
export function createStorage(parts: StorageParts): Storage {
  const shelf = openShelf(parts);
  let asked = false;
  let cleared = false;
  const safe = safeCopies(parts);
  const hear = (take: (said: unknown) => void): (() => void) => {
    const heard = (event: MessageEvent<unknown>): void => take(event.data);
    parts.channel?.addEventListener('message', heard);
    return () => parts.channel?.removeEventListener('message', heard);
  };
  hear((said) => {
    cleared ||= isCleared(said);
  });
  return {
    read: async (key): Promise<StorageRead> => {
      try {
        const text = safe.of(key) ?? (await (await shelf).read(key));
        return text === undefined ? { kind: 'nothing' } : { kind: 'found', text };
      } catch (error) {
        return { kind: 'refused', reason: reasonOf(error) };
      }
    },
    write: async (key, text): Promise<StorageWrite> => {
      if (cleared) return { kind: 'refused', reason: 'everything was deleted in another tab' };
      const drop = safe.lay(key, text);
      try {
        await (await shelf).write(key, text);
        drop();
      } catch (error) {
        return { kind: 'refused', reason: reasonOf(error) };
      }
      parts.channel?.postMessage(key);
      if (!asked) parts.persist();
      asked = true;
      return { kind: 'kept' };
    },
    onOtherTab: (listener) =>
      hear((said) => {
        if (typeof said === 'string') listener(said);
      }),
    tellCleared: () => parts.channel?.postMessage(CLEARED),
    onCleared: (listener) =>
      hear((said) => {
        if (isCleared(said)) listener();
      }),
  };
}

const isCleared = (said: unknown): boolean =>
  typeof said === 'object' && said !== null && 'everything' in said && said.everything === CLEARED.everything;

/**
 * A page that is closed takes its unfinished database writes with it. So each text lies in the small storage, which is written at once,
 * until the database has it; a copy that is still there when it is read was never confirmed, and is the newer one.
 */
function safeCopies(parts: StorageParts) {
  const place = (key: string): string => PREFIX + UNCONFIRMED + key;
  const tried = <Value>(action: () => Value): Value | undefined => {
    try {
      return action();
    } catch {
      return undefined;
    }
  };
  return {
    of: (key: string): string | undefined => tried(() => parts.local().getItem(place(key))) ?? undefined,
    lay: (key: string, text: string): (() => void) => {
      tried(() => parts.local().setItem(place(key), text));
      return () =>
        void tried(() => {
          if (parts.local().getItem(place(key)) === text) parts.local().removeItem(place(key));
        });
    },
  };
}

async function openShelf(parts: StorageParts): Promise<Shelf> {
  try {
    const database = await within(OPEN_MS, parts.openDatabase());
    return {
      read: async (key) => {
        const text: unknown = await database.get(STORE, key);
        return typeof text === 'string' ? text : undefined;
      },
      write: async (key, text) => void (await database.put(STORE, text, key)),
    };
  } catch {
    return {
      read: async (key) => parts.local().getItem(PREFIX + key) ?? undefined,
      write: async (key, text) => parts.local().setItem(PREFIX + key, text),
    };
  }
}

function within<Value>(ms: number, promise: Promise<Value>): Promise<Value> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(`the database did not open within ${ms} ms`)), ms);
    promise.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  return error.name === 'QuotaExceededError' ? 'the storage of this device is full' : error.message || error.name;
}
