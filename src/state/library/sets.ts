import type { StoreApi } from 'zustand/vanilla';
import { decode, encode, mergeShelves } from '../records';
import type { LibraryParts, LibraryState } from './parts';
import { type SetList, setsFrom } from './set-list';

/** What can be done with set lists. */
export interface Sets {
  /** Takes over the set lists that are kept. */
  readonly meetSets: () => Promise<void>;
  /** Begins a set list; returns its id. */
  readonly addSet: (name: string) => string;
  readonly changeSet: (id: string, change: Partial<Pick<SetList, 'name' | 'date' | 'charts'>>) => void;
  readonly removeSet: (id: string) => void;
  readonly restoreSet: (id: string) => void;
}

/** The acts on set lists; they are kept in one record, merged with what another tab keeps. */
export function createSets({ desk, storage, now, newId }: LibraryParts, store: StoreApi<LibraryState>): Sets {
  let all: readonly SetList[] = [];
  const kept = async (): Promise<readonly SetList[]> => {
    const found = await storage.read('sets');
    if (found.kind !== 'found') return [];
    const decoded = decode('sets', found.text);
    if (decoded.kind === 'good') return setsFrom(decoded.body);
    await storage.write('quarantine/sets', found.text);
    return [];
  };
  const show = (): void => store.setState({ sets: byDay(all.filter(({ removed }) => removed !== true)) });
  const put = (set: SetList): void => {
    all = mergeShelves([set], all);
    desk.keep('sets', async () => {
      all = mergeShelves(all, await kept());
      return encode('sets', { lists: all });
    });
    void desk.flush();
    show();
  };
  const meetSets = async (): Promise<void> => {
    all = mergeShelves(all, await kept());
    show();
  };
  storage.onOtherTab((key) => {
    if (key === 'sets') void meetSets();
  });
  const change = (id: string, by: Partial<SetList>): void => {
    const set = all.find((one) => one.id === id);
    if (set) put({ ...set, ...by, changed: Math.max(now(), set.changed + 1) });
  };
  return {
    meetSets,
    addSet: (name) => {
      const id = newId();
      put({ id, name, date: null, charts: [], changed: now() });
      return id;
    },
    changeSet: change,
    removeSet: (id) => {
      const set = all.find((one) => one.id === id);
      if (!set) return;
      change(id, { removed: true });
      store.setState({ removal: { kind: 'set list', id, title: set.name } });
    },
    restoreSet: (id) => {
      const set = all.find((one) => one.id === id);
      if (!set) return;
      const { removed: _, ...back } = set;
      put({ ...back, changed: Math.max(now(), set.changed + 1) });
    },
  };
}

/** The next day first; those without a day last, the newest first. */
const byDay = (sets: readonly SetList[]): readonly SetList[] =>
  [...sets].sort((a, b) => (a.date ?? '9999').localeCompare(b.date ?? '9999') || b.changed - a.changed);
