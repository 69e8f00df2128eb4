import { openDB } from 'idb';
import type { Archive } from '../state/ports';
import { giveWay } from './refusal';
import { DATABASE, PREFIX, STORE, UNCONFIRMED } from './storage';

/** Parts of the browser that the archive stands on; replaced in tests. */
export interface ArchiveParts {
  readonly openDatabase: () => Promise<ArchiveDatabase>;
  readonly local: () => globalThis.Storage;
}

/** As much of a database as the archive uses. */
export interface ArchiveDatabase {
  entries(): Promise<readonly (readonly [string, unknown])[]>;
  remove(keys: readonly string[]): Promise<void>;
  put(key: string, text: string): Promise<void>;
  clear(): Promise<void>;
}

/** The real parts: the database of `createStorage`, and the small storage beside it. */
export function browserArchiveParts(): ArchiveParts {
  return {
    openDatabase: async () => {
      const database = await openDB(DATABASE, 1, { upgrade: (fresh) => void fresh.createObjectStore(STORE), blocking: giveWay });
      return {
        entries: async () => {
          const transaction = database.transaction(STORE);
          const [keys, values] = await Promise.all([transaction.store.getAllKeys(), transaction.store.getAll()]);
          return keys.map((key, index) => [String(key), values[index] as unknown] as const);
        },
        remove: async (keys) => {
          const transaction = database.transaction(STORE, 'readwrite');
          await Promise.all([...keys.map((key) => transaction.store.delete(key)), transaction.done]);
        },
        put: async (key, text) => void (await database.put(STORE, text, key)),
        clear: () => database.clear(STORE),
      };
    },
    local: () => window.localStorage,
  };
}

/**
 * Everything that `createStorage` keeps, wherever it lies: in the database, in the small storage (used while the database was refused),
 * and copies that the database never confirmed. What lies in the small storage alone is brought into the database when that opens again; a
 * chart that was changed there and lies in the database too comes in beside it, so that neither text is lost.
 */
export function createArchive(parts: ArchiveParts): Archive {
  const database = parts.openDatabase().catch(() => null);

  const small = (): Map<string, string> => {
    const records = new Map<string, string>();
    try {
      const local = parts.local();
      for (let index = 0; index < local.length; index += 1) {
        const key = local.key(index);
        const text = key?.startsWith(PREFIX) ? local.getItem(key) : null;
        if (key !== null && text !== null) records.set(key.slice(PREFIX.length), text);
      }
    } catch {
      // Where the small storage is switched off nothing lies in it.
    }
    return records;
  };
  const drop = (keep: (key: string) => boolean): void => {
    for (const key of small().keys()) if (!keep(key)) parts.local().removeItem(PREFIX + key);
  };

  return {
    all: async () => {
      const opened = await database;
      const records = new Map<string, string>();
      for (const [key, text] of (await opened?.entries()) ?? []) if (typeof text === 'string') records.set(key, text);
      const lying = [...small()];
      for (const [key, text] of lying) {
        const free = freeKey(key, text, records);
        if (free === null) continue;
        records.set(free, text);
        await opened?.put(free, text).then(
          () => parts.local().removeItem(PREFIX + key),
          () => undefined,
        );
      }
      for (const [key, text] of lying) if (key.startsWith(UNCONFIRMED)) records.set(key.slice(UNCONFIRMED.length), text);
      return records;
    },
    remove: async (keys) => {
      await (await database)?.remove(keys);
      const gone = new Set(keys.flatMap((key) => [key, UNCONFIRMED + key]));
      drop((key) => !gone.has(key));
    },
    clear: async () => {
      await (await database)?.clear();
      drop(() => false);
    },
  };
}

/** Where a record of the small storage goes among those of the database, or null when it stays where it is. */
function freeKey(key: string, text: string, records: ReadonlyMap<string, string>): string | null {
  if (key.startsWith(UNCONFIRMED)) return null;
  const lying = records.get(key);
  if (lying === undefined) return key;
  if (!key.startsWith('chart/') || lying === text) return null;
  const beside = `${key}-beside`;
  return records.has(beside) ? null : beside;
}
