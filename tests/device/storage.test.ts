import type { IDBPDatabase } from 'idb';
import { describe, expect, it } from 'vitest';
import { createStorage, type StorageParts } from '../../src/device/storage';

/** A database of one store, as far as the storage uses it. */
function database(records = new Map<string, unknown>(), fails: Error | null = null): IDBPDatabase {
  const stand = {
    get: async (_store: string, key: string) => records.get(key),
    put: async (_store: string, text: string, key: string) => {
      if (fails) throw fails;
      records.set(key, text);
      return key;
    },
  };
  return stand as unknown as IDBPDatabase;
}

/** The small storage, as a map. */
function small(records = new Map<string, string>(), fails: Error | null = null): globalThis.Storage {
  const stand = {
    getItem: (key: string) => records.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (fails) throw fails;
      records.set(key, text);
    },
    removeItem: (key: string) => records.delete(key),
  };
  return stand as unknown as globalThis.Storage;
}

const full = Object.assign(new Error('quota exceeded'), { name: 'QuotaExceededError' });
const parts = (own: Partial<StorageParts>): StorageParts => ({
  openDatabase: async () => database(),
  local: () => small(),
  channel: null,
  persist: () => undefined,
  ...own,
});

describe('Storage of the device', () => {
  it('gives back what was written, and says when there is nothing', async () => {
    const storage = createStorage(parts({}));
    const shared = database();
    const same = createStorage(parts({ openDatabase: async () => shared }));
    expect(await storage.read('chart/1')).toEqual({ kind: 'nothing' });
    expect(await same.write('chart/1', 'text')).toEqual({ kind: 'kept' });
    expect(await same.read('chart/1')).toEqual({ kind: 'found', text: 'text' });
  });

  it('uses the small storage where the database is refused', async () => {
    const records = new Map<string, string>();
    const storage = createStorage(parts({ openDatabase: () => Promise.reject(new Error('private window')), local: () => small(records) }));
    expect(await storage.write('chart/1', 'text')).toEqual({ kind: 'kept' });
    expect(await storage.read('chart/1')).toEqual({ kind: 'found', text: 'text' });
    expect([...records.keys()]).toEqual(['contratiempo/chart/1']);
  });

  it('loses nothing when the page goes away in the middle of a write', async () => {
    const records = new Map<string, string>();
    const kept = new Map<string, unknown>([['chart/1', 'old']]);
    const never = { ...database(kept), put: () => new Promise(() => undefined) } as unknown as IDBPDatabase;
    const leaving = createStorage(parts({ openDatabase: async () => never, local: () => small(records) }));
    void leaving.write('chart/1', 'new');
    const next = createStorage(parts({ openDatabase: async () => database(kept), local: () => small(records) }));
    expect(await next.read('chart/1')).toEqual({ kind: 'found', text: 'new' });
    await next.write('chart/1', 'newer');
    expect(records.size).toBe(0);
    expect(await next.read('chart/1')).toEqual({ kind: 'found', text: 'newer' });
  });

  it('loses nothing of what was typed while an earlier write hung', async () => {
    const records = new Map<string, string>();
    const never = { ...database(), put: () => new Promise(() => undefined) } as unknown as IDBPDatabase;
    const leaving = createStorage(parts({ openDatabase: async () => never, local: () => small(records) }));
    void leaving.write('chart/1', 'first');
    void leaving.write('chart/1', 'first, and on');
    const next = createStorage(parts({ local: () => small(records) }));
    expect(await next.read('chart/1')).toEqual({ kind: 'found', text: 'first, and on' });
  });

  it('says that the device is full in plain words', async () => {
    const storage = createStorage(parts({ openDatabase: async () => database(new Map(), full) }));
    expect(await storage.write('chart/1', 'text')).toEqual({ kind: 'refused', reason: 'the storage of this device is full' });
  });

  it('refuses, and throws nothing, where there is no storage at all', async () => {
    const storage = createStorage(
      parts({
        openDatabase: () => Promise.reject(new Error('no database')),
        local: () => {
          throw new Error('access to storage is blocked');
        },
      }),
    );
    expect(await storage.read('x')).toEqual({ kind: 'refused', reason: 'access to storage is blocked' });
    expect(await storage.write('x', 'text')).toEqual({ kind: 'refused', reason: 'access to storage is blocked' });
  });

  it('tells other tabs which key was written, only once it is kept, and asks once for the storage to last', async () => {
    const told: unknown[] = [];
    let asked = 0;
    let fails: Error | null = null;
    const channel = { postMessage: (key: unknown) => told.push(key), addEventListener: () => undefined } as unknown as BroadcastChannel;
    const records = new Map<string, unknown>();
    const opened = {
      put: async (_: string, text: string, key: string) => {
        if (fails) throw fails;
        records.set(key, text);
      },
    } as unknown as IDBPDatabase;
    const storage = createStorage(
      parts({
        openDatabase: async () => opened,
        channel,
        persist: () => {
          asked += 1;
        },
      }),
    );
    await storage.write('a', '1');
    fails = full;
    await storage.write('b', '2');
    fails = null;
    await storage.write('c', '3');
    expect(told).toEqual(['a', 'c']);
    expect(asked).toBe(1);
  });

  it('refuses to write once another tab has deleted everything, and tells the others when it has', async () => {
    const [here, there] = [new BroadcastChannel('cleared'), new BroadcastChannel('cleared')];
    const kept = new Map<string, unknown>();
    const [teller, hearer] = [here, there].map((channel) => createStorage(parts({ channel, openDatabase: async () => database(kept) })));
    const told = new Promise<void>((resolve) => hearer?.onCleared(resolve));
    teller?.tellCleared();
    await told;
    expect(await hearer?.write('chart/1', 'text')).toEqual({ kind: 'refused', reason: 'everything was deleted in another tab' });
    expect(await teller?.write('chart/2', 'text')).toEqual({ kind: 'kept' });
    expect([...kept.keys()]).toEqual(['chart/2']);
    here.close();
    there.close();
  });

  it('hears other tabs until it is told not to', () => {
    const channel = new EventTarget() as unknown as BroadcastChannel;
    const heard: string[] = [];
    const stop = createStorage(parts({ channel })).onOtherTab((key) => heard.push(key));
    channel.dispatchEvent(new MessageEvent('message', { data: 'shelf' }));
    channel.dispatchEvent(new MessageEvent('message', { data: 7 }));
    stop();
    channel.dispatchEvent(new MessageEvent('message', { data: 'desk' }));
    expect(heard).toEqual(['shelf']);
  });
});
