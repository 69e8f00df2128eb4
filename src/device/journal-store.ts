import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { JournalEntry, JournalStore } from '../state/ports';
import { giveWay, reasonOf } from './refusal';

const DATABASE = 'contratiempo-journal';
const STORE = 'entries';

interface Schema extends DBSchema {
  [STORE]: { key: string; value: JournalEntry; indexes: { at: number } };
}

/** Opens the journal's own database: it grows for years, and the shelf must never wait for it. */
export const openJournal = (): Promise<IDBPDatabase<Schema>> =>
  openDB<Schema>(DATABASE, 1, {
    upgrade: (database) => void database.createObjectStore(STORE, { keyPath: 'id' }).createIndex('at', 'at'),
    blocking: giveWay,
  });

/** Keeps the journal in IndexedDB, one row an entry. */
export function createJournalStore(open: () => Promise<IDBPDatabase<Schema>> = openJournal): JournalStore {
  let opened: Promise<IDBPDatabase<Schema>> | null = null;
  const database = (): Promise<IDBPDatabase<Schema>> => {
    opened ??= open();
    // A refusal may pass; the next call asks again.
    opened.catch(() => {
      opened = null;
    });
    return opened;
  };
  /** Acts on the database. One that was closed behind our back, by the browser or for a newer page, is opened again, once. */
  const on = async <Answer>(act: (database: IDBPDatabase<Schema>) => Promise<Answer>): Promise<Answer> => {
    const here = await database();
    try {
      return await act(here);
    } catch (error) {
      opened = null;
      if (error instanceof Error && error.name === 'InvalidStateError') return act(await database());
      throw error;
    }
  };
  return {
    add: async (entries) => {
      try {
        await on(async (here) => {
          const transaction = here.transaction(STORE, 'readwrite');
          for (const entry of entries) if ((await transaction.store.getKey(entry.id)) === undefined) await transaction.store.add(entry);
          await transaction.done;
        });
        return { kind: 'kept' };
      } catch (error) {
        return { kind: 'refused', reason: reasonOf(error) };
      }
    },
    between: async (from, to) => {
      if (to <= from) return [];
      return on((here) => here.getAllFromIndex(STORE, 'at', IDBKeyRange.bound(from, to, false, true)));
    },
    remove: (ids) =>
      on(async (here) => {
        const transaction = here.transaction(STORE, 'readwrite');
        await Promise.all([...ids.map((id) => transaction.store.delete(id)), transaction.done]);
      }),
    clear: () => on((here) => here.clear(STORE)),
  };
}
