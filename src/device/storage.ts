import type { IDBPDatabase } from 'idb';
import type { Storage, StorageRead, StorageWrite } from '../state/ports';
import { giveWay, isFromNewer, NEWER, reasonOf } from './refusal';

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
  /** Opens the database; one that keeps a newer version of the page from opening it is closed, and `onNewer` is told. */
  readonly openDatabase: (onNewer: () => void) => Promise<IDBPDatabase>;
  /** The small storage that is used when the database cannot be opened. */
  readonly local: () => globalThis.Storage;
  /** Tells other tabs of a write. Null where the browser cannot. */
  readonly channel: BroadcastChannel | null;
  readonly persist: () => void;
}

/** Opens the database of this version of the page; `onNewer` is called when it is closed because a newer version wants to change it. */
export async function openRecords(onNewer: () => void): Promise<IDBPDatabase> {
  // Fetched apart from the first screen, which does not wait for it.
  const { openDB } = await import('idb');
  return openDB(DATABASE, 1, {
    upgrade: (database) => void database.createObjectStore(STORE),
    blocking: (current, newer, event) => {
      giveWay(current, newer, event);
      // Null where it is deleted.
      if (newer !== null) onNewer();
    },
  });
}

/** The real parts: IndexedDB, localStorage and a broadcast channel. */
export function browserStorageParts(): StorageParts {
  return {
    openDatabase: openRecords,
    local: () => window.localStorage,
    channel: 'BroadcastChannel' in window ? new BroadcastChannel(DATABASE) : null,
    persist: () => void navigator.storage?.persist?.().catch(() => false),
  };
}

/**
 * Keeps records in IndexedDB, or in localStorage where the database is refused. Every failure comes back as `refused` with the browser's own reason.
 * What a newer version of the page has changed is left alone: then charts alone are laid into the small storage, from where the newer one
 * takes them in beside its own (`createArchive`), and every write is refused.
 */
export function createStorage(parts: StorageParts): Storage {
  let newer = false;
  const newerListeners = new Set<() => void>();
  const tellNewer = (): void => {
    newer = true;
    for (const listener of newerListeners) listener();
  };
  const shelf = openShelf(parts, tellNewer);
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
        const laid = safe.of(key);
        const opened = await shelf;
        const text = laid ?? (await (newer ? leftBeside(parts) : opened).read(key));
        return text === undefined ? { kind: 'nothing' } : { kind: 'found', text };
      } catch (error) {
        return { kind: 'refused', reason: reasonOf(error) };
      }
    },
    write: async (key, text): Promise<StorageWrite> => {
      if (cleared) return { kind: 'refused', reason: 'everything was deleted in another tab' };
      const drop = safe.lay(key, text);
      try {
        const opened = await shelf;
        // A copy that was laid for this write would be taken for newer than what the newer version has written.
        if (newer) drop();
        await (newer ? leftBeside(parts) : opened).write(key, text);
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
    onNewer: (listener) => {
      newerListeners.add(listener);
      if (newer) listener();
      return () => newerListeners.delete(listener);
    },
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

async function openShelf(parts: StorageParts, onNewer: () => void): Promise<Shelf> {
  try {
    const opening = parts.openDatabase(onNewer);
    opening.catch((error) => isFromNewer(error) && onNewer());
    const database = await within(OPEN_MS, opening);
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

/** What is left where a newer version of the page has the database: charts, each for itself, and a refusal of everything else. */
function leftBeside(parts: StorageParts): Shelf {
  return {
    read: async (key) => {
      const text = key.startsWith('chart/') ? parts.local().getItem(PREFIX + key) : null;
      if (text === null) throw new Error(NEWER);
      return text;
    },
    write: async (key, text) => {
      if (key.startsWith('chart/')) parts.local().setItem(PREFIX + key, text);
      throw new Error(NEWER);
    },
  };
}

function within<Value>(ms: number, promise: Promise<Value>): Promise<Value> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(`the database did not open within ${ms} ms`)), ms);
    promise.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}
