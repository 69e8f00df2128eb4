import type { StoreApi } from 'zustand/vanilla';
import { titleOf } from '../chart-text';
import type { ShelfEntry } from '../desk-state';
import { chartFrom, decode, encode } from '../records';
import type { LibraryParts, LibraryState } from './parts';
import { ownCharts, searched } from './search';
import { titled } from './titled';

/** After this long a chart that was taken away is gone from the device. */
const KEPT_MS = 30 * 24 * 3600 * 1000;

/** What can be done with the charts on the shelf. */
export interface ShelfActs {
  /** Reads every text that is kept. Charts that no entry names (a shelf that could not be read) come back onto it. */
  readonly meet: () => Promise<void>;
  /** The text of a chart: as it stands on the desk, as kept, or of the demo book; empty when there is none. */
  readonly textOf: (id: string) => string;
  /** The player's own charts that fit `query`. */
  readonly search: (query: string) => readonly ShelfEntry[];
  /** Charts that were taken away and are still kept, the last first. */
  readonly removedCharts: () => readonly ShelfEntry[];
  /** Puts a chart on the shelf; returns its id. */
  readonly add: (text: string) => string;
  /** A second chart with the same text and settings under `title`; returns its id. */
  readonly duplicate: (id: string, title: string) => Promise<string>;
  readonly rename: (id: string, title: string) => void;
  readonly remove: (id: string) => void;
  readonly restore: (id: string) => void;
}

/** The acts on the shelf, over the texts that are kept. */
export function createShelf({ desk, storage, archive, now, newId }: LibraryParts, store: StoreApi<LibraryState>): ShelfActs {
  const texts = new Map<string, string>();
  const shelf = (): readonly ShelfEntry[] => desk.desk.getState().shelf;
  /** What is done by hand is kept at once: the shelf is merged with what other tabs keep, which a page that is being left has no time for. */
  const put = (entry: ShelfEntry): void => {
    const others = shelf().filter(({ id }) => id !== entry.id);
    desk.desk.setState({ shelf: [entry, ...others].sort((a, b) => b.changed - a.changed) });
    void desk.flush();
  };
  const entryOf = (id: string): ShelfEntry | undefined => shelf().find((entry) => entry.id === id);
  const textOf = (id: string): string => {
    const { chartId, text } = desk.desk.getState();
    return id === chartId ? text : (texts.get(id) ?? desk.demos.find((demo) => demo.id === id)?.text ?? '');
  };
  const write = (id: string, text: string): void => {
    texts.set(id, text);
    desk.keep(`chart/${id}`, () => encode('chart', { text, good: null }));
    store.setState({ edition: store.getState().edition + 1 });
  };
  // What was typed is searched as typed, also once another chart lies on the desk.
  desk.desk.subscribe((state) => texts.set(state.chartId, state.text));

  const add = (text: string): string => {
    const id = newId();
    write(id, text);
    put({ id, title: titleOf(text), changed: now() });
    return id;
  };

  const meet = async (): Promise<void> => {
    const records = await archive.all().catch(() => new Map<string, string>());
    const gone: string[] = [];
    for (const [key, record] of records) {
      const id = /^chart\/(.+)$/.exec(key)?.[1];
      if (id === undefined || id === 'quick') continue;
      const decoded = decode('chart', record);
      const chart = decoded.kind === 'good' ? chartFrom(decoded.body) : null;
      const entry = entryOf(id);
      if (entry?.removed && entry.changed < now() - KEPT_MS) gone.push(key, `settings/${id}`);
      else if (chart) {
        texts.set(id, chart.text);
        if (!entry) put({ id, title: titleOf(chart.text), changed: 0 });
      }
    }
    if (gone.length > 0) await archive.remove(gone).catch(() => undefined);
    store.setState({ edition: store.getState().edition + 1 });
  };

  return {
    meet,
    textOf,
    add,
    search: (query) => searched(ownCharts(shelf()), textOf, query),
    removedCharts: () => shelf().filter((entry) => entry.removed === true && texts.has(entry.id)),
    duplicate: async (id, title) => {
      await desk.flush();
      const settings = await storage.read(`settings/${id}`);
      const copy = add(titled(textOf(id), title));
      if (settings.kind === 'found') desk.keep(`settings/${copy}`, () => settings.text);
      return copy;
    },
    rename: (id, title) => {
      const text = titled(textOf(id), title);
      if (id === desk.desk.getState().chartId) desk.run({ kind: 'type', text });
      else {
        write(id, text);
        put({ id, title: titleOf(text), changed: now() });
      }
    },
    remove: (id) => {
      const entry = entryOf(id);
      if (!entry) return;
      put({ ...entry, changed: now(), removed: true });
      store.setState({ removal: { kind: 'chart', id, title: entry.title } });
      const next = ownCharts(shelf())[0]?.id ?? desk.demos[0]?.id;
      if (id === desk.desk.getState().chartId && next !== undefined) desk.run({ kind: 'open', chartId: next });
    },
    restore: (id) => {
      const entry = entryOf(id);
      if (entry) put({ id, title: entry.title, changed: now() });
    },
  };
}
