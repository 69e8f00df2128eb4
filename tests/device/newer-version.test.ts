/** A database that a newer version of the page has changed, against `fake-indexeddb`, an independent in-memory database: version errors and `versionchange` are the standard's own. */
import 'fake-indexeddb/auto';
import { type IDBPDatabase, openDB } from 'idb';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { browserArchiveParts, createArchive } from '../../src/device/archive';
import { createJournalStore } from '../../src/device/journal-store';
import { NEWER } from '../../src/device/refusal';
import { createStorage, DATABASE, openRecords, STORE } from '../../src/device/storage';

const local = new Map<string, string>();
const small = {
  get length() {
    return local.size;
  },
  key: (index: number) => [...local.keys()][index] ?? null,
  getItem: (key: string) => local.get(key) ?? null,
  setItem: (key: string, text: string) => void local.set(key, text),
  removeItem: (key: string) => void local.delete(key),
} as unknown as globalThis.Storage;
const smallParts = { local: () => small };
/** The page of this version: the real way to the database, the small storage as a map. */
const page = () => createStorage({ openDatabase: openRecords, ...smallParts, channel: null, persist: () => undefined });
/** The newer version opens the database, and writes. */
const newerPage = async (): Promise<IDBPDatabase> => {
  const database = await openDB(DATABASE, 2, {
    upgrade: (fresh, from) => {
      if (from === 0) fresh.createObjectStore(STORE);
    },
  });
  await database.put(STORE, 'of the newer one', 'preferences');
  return database;
};
const told = (storage: ReturnType<typeof page>): string[] => {
  const heard: string[] = [];
  storage.onNewer(() => heard.push('newer'));
  return heard;
};

const deleted = (name: string): Promise<unknown> =>
  new Promise((resolve) => {
    indexedDB.deleteDatabase(name).onsuccess = resolve;
  });

beforeEach(async () => {
  local.clear();
  await deleted(DATABASE);
});

// Other files share this process and its databases.
afterAll(async () => {
  await deleted(DATABASE);
  await deleted('contratiempo-journal');
});

describe('A database that a newer version of the page has written', () => {
  it('is said to be one, is refused, and holds afterwards what it held', async () => {
    const newer = await newerPage();
    newer.close();
    const storage = page();
    const heard = told(storage);
    expect(await storage.read('preferences')).toEqual({ kind: 'refused', reason: NEWER });
    expect(heard).toEqual(['newer']);
    expect(told(storage), 'who asks later is told at once').toEqual(['newer']);
    expect(await storage.write('preferences', 'of the older one')).toEqual({ kind: 'refused', reason: NEWER });
    expect(await storage.write('chart/1', 'typed here')).toEqual({ kind: 'refused', reason: NEWER });
    expect([...local], 'nothing that the newer one would take for its own').toEqual([['contratiempo/chart/1', 'typed here']]);
    expect(await storage.read('chart/1')).toEqual({ kind: 'found', text: 'typed here' });
    const again = await openDB(DATABASE, 2);
    expect(await again.getAllKeys(STORE)).toEqual(['preferences']);
    expect(await again.get(STORE, 'preferences')).toBe('of the newer one');
    again.close();
  });

  it('is let go by an open page of the older version, which says so and is refused from then on', async () => {
    const storage = page();
    const heard = told(storage);
    expect(await storage.write('preferences', 'of the older one')).toEqual({ kind: 'kept' });
    const archive = createArchive({ ...browserArchiveParts(), ...smallParts });
    expect((await archive.all()).get('preferences')).toBe('of the older one');
    expect(heard).toEqual([]);
    const newer = await newerPage();
    expect(heard).toEqual(['newer']);
    expect(await storage.write('preferences', 'older again')).toEqual({ kind: 'refused', reason: NEWER });
    expect(await storage.write('chart/1', 'typed on')).toEqual({ kind: 'refused', reason: NEWER });
    expect(await newer.get(STORE, 'preferences')).toBe('of the newer one');
    newer.close();
  });

  it('gets the charts that were typed meanwhile beside its own, by the archive', async () => {
    const storage = page();
    await storage.write('chart/1', 'as kept');
    const newer = await newerPage();
    await storage.write('chart/1', 'typed on in the older page');
    await storage.write('chart/2', 'begun in the older page');
    newer.close();
    const later = await openDB(DATABASE, 2);
    const archive = createArchive({
      ...smallParts,
      openDatabase: async () => ({
        entries: async () => {
          const [keys, values] = await Promise.all([later.getAllKeys(STORE), later.getAll(STORE)]);
          return keys.map((key, index) => [String(key), values[index] as unknown] as const);
        },
        remove: async () => undefined,
        put: async (key, text) => void (await later.put(STORE, text, key)),
        clear: async () => undefined,
      }),
    });
    const records = await archive.all();
    later.close();
    expect(records.get('chart/1')).toBe('as kept');
    expect(records.get('chart/1-beside')).toBe('typed on in the older page');
    expect(records.get('chart/2')).toBe('begun in the older page');
  });

  it('is no matter of a database that is deleted', async () => {
    const storage = page();
    const heard = told(storage);
    await storage.write('chart/1', 'text');
    await deleted(DATABASE);
    expect(heard).toEqual([]);
  });
});

describe('A journal that a newer version of the page has written', () => {
  it('is let go for it, and refused with the same reason', async () => {
    const journal = createJournalStore();
    expect(await journal.add([{ id: 'a', at: 1, text: '{}' }])).toEqual({ kind: 'kept' });
    const newer = await openDB('contratiempo-journal', 2);
    expect(await journal.add([{ id: 'b', at: 2, text: '{}' }])).toEqual({ kind: 'refused', reason: NEWER });
    expect(await newer.getAllKeys('entries')).toEqual(['a']);
    newer.close();
  });
});
