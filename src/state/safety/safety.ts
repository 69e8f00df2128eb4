import { createStore, type StoreApi } from 'zustand/vanilla';
import { type Backup, writeBackup } from '../../exchange/backup/backup';
import { type MergeWrites, mergeWrites, type OnDifference, planMerge } from '../../exchange/backup/merge';
import { readBackup } from '../../exchange/backup/read-backup';
import { SAFETY_WORDS } from '../../words/safety';
import type { ShelfEntry } from '../desk-state';
import { type SetList, setsFrom } from '../library/set-list';
import { decode, encode, mergeShelves } from '../records';
import { fieldsOf } from '../saved-fields';
import { DEFAULT_PREFERENCES } from '../settings';
import { preferencesFrom } from '../settings-record';
import { collected } from './collect';
import type { SafetyParts, SafetyState } from './parts';

/** Everything about keeping the player's work safe: backup, restore, clearing, report. */
export interface Safety {
  readonly store: StoreApi<SafetyState>;
  readonly askToLast: () => Promise<void>;
  /** Hands out one file with everything. */
  readonly saveBackup: () => Promise<void>;
  /** Reads a backup and shows what it would bring; nothing is written. */
  readonly considerRestore: (name: string, text: string) => Promise<void>;
  readonly leaveRestore: () => void;
  /** Carries the merge out that was shown. */
  readonly restore: (choice: { readonly onDifference: OnDifference; readonly withSettings: boolean }) => Promise<void>;
  /** Puts everything back as it was before the last merge. */
  readonly undoRestore: () => Promise<void>;
  /** How much there is on this device. */
  readonly counts: () => Promise<{ readonly charts: number; readonly sets: number; readonly entries: number }>;
  /** Removes everything from this device and loads the page anew. */
  readonly deleteAll: () => Promise<void>;
  readonly copyReport: () => Promise<void>;
}

/** What stood where a merge wrote. */
interface Before {
  readonly records: ReadonlyMap<string, string | undefined>;
  readonly shelf: readonly ShelfEntry[];
  readonly writes: MergeWrites;
  /** Ids of charts that were not on the shelf. */
  readonly added: readonly string[];
}

const NO_ANSWER = 'the device has not answered yet';
const NO_PERSISTENCE = { lasting: null, usage: null, quota: null };

/** Opens safe keeping over a desk. */
export async function createSafety(parts: SafetyParts): Promise<Safety> {
  const { desk, archive, journal, saver, persistence, now, newId } = parts;
  const store = createStore<SafetyState>(() => ({
    persistence: null,
    lastBackup: null,
    waiting: null,
    faults: [],
    merged: false,
    refused: null,
    report: null,
  }));
  let before: Before | null = null;

  /** What a newer version of the page has written cannot be read here; the backup is then of what was made in this page. */
  const orLeft = <Kept>(kept: Promise<Kept>, nothing: Kept): Promise<Kept> =>
    kept.catch((error: unknown) => {
      if (desk.desk.getState().keeping.kind === 'newer') return nothing;
      throw error;
    });
  const collect = async (): Promise<Backup> => {
    await desk.flush();
    const kept = Promise.all([orLeft(archive.all(), new Map<string, string>()), orLeft(journal.between(0, Number.MAX_SAFE_INTEGER), [])]);
    if (!(await desk.inTime(kept))) throw new Error(NO_ANSWER);
    const [records, entries] = await kept;
    return collected(
      new Map([...records, ...(await desk.unconfirmed())]),
      desk.desk.getState().shelf,
      entries,
      new Date(now()).toISOString(),
    );
  };
  /** Runs an act; what the device refuses is shown, never thrown. */
  const tried = async (act: () => Promise<void>): Promise<void> => {
    store.setState({ refused: null });
    try {
      await act();
    } catch (error) {
      store.setState({ refused: error instanceof Error ? error.message || error.name : String(error) });
    }
  };

  const write = async (writes: MergeWrites): Promise<void> => {
    const { charts, sets, entries, records } = writes;
    const kept = await archive.all();
    const texts = new Map<string, string>(Object.entries(records));
    for (const { id, text, good, settings } of charts) {
      texts.set(`chart/${id}`, encode('chart', { text, good }));
      if (settings !== null) texts.set(`settings/${id}`, settings);
    }
    if (sets.length > 0) {
      const decoded = decode('sets', kept.get('sets') ?? '');
      texts.set('sets', encode('sets', { lists: mergeShelves(sets, decoded.kind === 'good' ? setsFrom(decoded.body) : []) }));
    }
    const { shelf } = desk.desk.getState();
    before = {
      records: new Map([...texts.keys()].map((key) => [key, kept.get(key)])),
      shelf,
      writes,
      added: charts.map(({ id }) => id).filter((id) => !shelf.some((entry) => entry.id === id && entry.removed !== true)),
    };
    for (const [key, text] of texts) desk.keep(key, () => text);
    const fresh = charts.map(({ id, title, changed }) => ({ id, title, changed: Math.max(changed, newestOf(shelf, id) + 1) }));
    desk.desk.setState({ shelf: mergeShelves(fresh, shelf) });
    await desk.flush();
    const added = await journal.add(entries);
    if (added.kind === 'refused') throw new Error(added.reason);
    await taken(texts);
  };

  /** Shows what was written to those who hold it in memory. */
  const taken = async (texts: ReadonlyMap<string, string | undefined>): Promise<void> => {
    const preferences = texts.get('preferences');
    const decoded = preferences === undefined ? null : decode('preferences', preferences);
    if (decoded?.kind === 'good') desk.desk.setState({ preferences: preferencesFrom(decoded.body, DEFAULT_PREFERENCES) });
    await parts.refresh();
    const { chartId } = desk.desk.getState();
    if (texts.has(`chart/${chartId}`) || texts.has(`settings/${chartId}`)) desk.run({ kind: 'open', chartId });
  };

  const meetLastBackup = async (): Promise<void> => {
    const safety = decode('safety', (await archive.all().catch(() => new Map<string, string>())).get('safety') ?? '');
    const { lastBackup } = fieldsOf(safety.kind === 'good' ? safety.body : null);
    if (typeof lastBackup === 'number' && store.getState().lastBackup === null) store.setState({ lastBackup });
  };
  await desk.inTime(meetLastBackup());
  store.setState({ persistence: await persistence.state().catch(() => NO_PERSISTENCE) });

  return {
    store,
    askToLast: async () => store.setState({ persistence: await persistence.ask().catch(() => NO_PERSISTENCE) }),
    saveBackup: () =>
      tried(async () => {
        const backup = await collect();
        saver.save(SAFETY_WORDS.fileName(backup.made.slice(0, 10)), 'application/json', new TextEncoder().encode(writeBackup(backup)));
        store.setState({ lastBackup: now() });
        desk.keep('safety', () => encode('safety', { lastBackup: store.getState().lastBackup }));
      }),
    considerRestore: (name, text) =>
      tried(async () => {
        const read = readBackup(text);
        if (!read.ok) store.setState({ waiting: null, faults: read.faults });
        else {
          const { backup: file, leftOut } = read.value;
          store.setState({ faults: [], waiting: { name, file, plan: planMerge(await collect(), file), leftOut } });
        }
      }),
    leaveRestore: () => store.setState({ waiting: null, faults: [] }),
    restore: (choice) =>
      tried(async () => {
        const { waiting } = store.getState();
        if (!waiting) return;
        // What was typed since the plan was shown counts as well.
        const plan = planMerge(await collect(), waiting.file);
        await write(mergeWrites(plan, waiting.file, choice, newId));
        store.setState({ waiting: null, merged: true });
      }),
    undoRestore: () =>
      tried(async () => {
        if (!before) return;
        const back = before;
        before = null;
        await desk.flush();
        const gone = [...back.records].flatMap(([key, text]) => (text === undefined && key !== 'sets' ? [key] : []));
        await archive.remove(gone);
        for (const [key, text] of back.records) if (text !== undefined && key !== 'sets') desk.keep(key, () => text);
        if (back.records.has('sets')) desk.keep('sets', () => encode('sets', { lists: setsBefore(back) }));
        desk.desk.setState({ shelf: shelfBefore(back, desk.desk.getState().shelf) });
        await desk.flush();
        await journal.remove(back.writes.entries.map(({ id }) => id));
        await taken(back.records);
        const open = desk.desk.getState().chartId;
        const [first] = desk.demos;
        if (back.added.includes(open) && first) desk.run({ kind: 'open', chartId: first.id });
        store.setState({ merged: false });
      }),
    counts: async () => {
      const { charts, sets, journal: entries } = await collect();
      return { charts: charts.length, sets: sets.length, entries: entries.length };
    },
    deleteAll: () =>
      tried(async () => {
        await desk.flush();
        await archive.clear();
        await journal.clear();
        parts.storage.tellCleared();
        parts.reload();
      }),
    copyReport: () =>
      tried(async () => {
        const { shelf, keeping, faults, putAside, settings, preferences } = desk.desk.getState();
        const facts = {
          ...(await parts.deviceFacts()),
          charts: String(shelf.length),
          keeping: keeping.kind === 'refused' ? `refused: ${keeping.reason}` : keeping.kind,
          faults: String(faults.length),
          'put aside': String(putAside.length),
          view: settings.view,
          level: String(settings.level),
          theme: preferences.theme,
        };
        const text = Object.entries(facts)
          .map(([name, value]) => `${name}: ${value}`)
          .join('\n');
        store.setState({ report: { text, copied: await parts.copy(text) } });
      }),
  };
}

const newestOf = (shelf: readonly ShelfEntry[], id: string): number => shelf.find((entry) => entry.id === id)?.changed ?? -1;

/** The shelf as it was: newer than what the merge wrote, and without the charts it brought, so that no other tab brings them back. */
function shelfBefore({ shelf, added, writes }: Before, now: readonly ShelfEntry[]): readonly ShelfEntry[] {
  const later = (id: string): number => newestOf(now, id) + 1;
  const tombs = added.map((id) => ({ id, title: '', changed: later(id), removed: true as const }));
  const touched = new Set(writes.charts.map(({ id }) => id));
  const back = shelf.map((entry) => (touched.has(entry.id) ? { ...entry, changed: later(entry.id) } : entry));
  return mergeShelves(tombs, back);
}

/** The set lists as they were, in the same way. */
function setsBefore({ records, writes }: Before): readonly SetList[] {
  const decoded = decode('sets', records.get('sets') ?? '');
  const kept = decoded.kind === 'good' ? setsFrom(decoded.body) : [];
  const undone = writes.sets.map((set): SetList => {
    const old = kept.find(({ id }) => id === set.id);
    return { ...(old ?? { ...set, removed: true as const }), changed: set.changed + 1 };
  });
  return mergeShelves(undone, kept);
}
