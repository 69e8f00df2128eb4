import { createStore, type StoreApi } from 'zustand/vanilla';
import { dayOf } from '../../practice/due-dates';
import { type JournalRecord, type NoteRecord, readRecord, writeRecord } from '../../practice/journal';
import { journalCsv } from '../../practice/journal-csv';
import { JOURNAL_WORDS } from '../../words/journal';
import type { AssignmentRoom } from '../assignment/assignment-state';
import type { ListeningState } from '../listening/listening-state';
import type { JournalEntry } from '../ports';
import { checkOf, type Zone } from './due-items';
import type { JournalPorts, JournalState, KeptRecord } from './journal-state';
import { createPassRecords, ratedPass } from './pass-record';
import { createSessions, type Sessions } from './session';
import { createSetStudies, type SetStudies } from './set-study';

/** The journal as the screens and the listening see it. */
export interface Journal extends SetStudies, Sessions {
  readonly store: StoreApi<JournalState>;
  /** Reads what is kept, anew: another tab may have written since. */
  readonly meet: () => Promise<void>;
  /** Hears that what listens has changed, and keeps what it says about whole passes. */
  readonly hear: (now: ListeningState, before: ListeningState) => Promise<void>;
  readonly note: (text: string) => Promise<void>;
  /** Writes down a drill that ended, with the chart that lay on the desk. */
  readonly drill: (drill: string, right: number, of: number, seed: number | null) => Promise<void>;
  readonly remove: (ids: readonly string[]) => Promise<void>;
  readonly undoRemoval: () => Promise<void>;
  /** Hands the journal out as comma-separated values; of one chart, or of all. */
  readonly saveCsv: (chart?: string) => void;
  /** Today, as a whole number of days since 1970 where the player is. */
  readonly today: () => number;
  readonly zone: Zone;
  /** Opens a chart with these bars looped. */
  readonly open: (chart: string, bars: { readonly fromBar: number; readonly toBar: number }) => void;
  /** What teacher and student hand to each other; fetched when it is first asked for. */
  readonly assignments: () => Promise<AssignmentRoom>;
}

const EMPTY: JournalState = {
  loaded: false,
  records: [],
  newer: 0,
  unread: 0,
  refused: null,
  removed: [],
  study: null,
  known: new Set(),
  rests: true,
  session: null,
};

/** Opens the journal on a desk. */
export async function createJournal(ports: JournalPorts): Promise<Journal> {
  const { desk, journal, now, newId, zone } = ports;
  const store = createStore<JournalState>(() => EMPTY);
  const passes = createPassRecords(desk);
  const refuse = (error: unknown): void =>
    store.setState({ refused: error instanceof Error ? error.message : String(error), loaded: true });

  /** Written down and not kept yet: the device refused. Tried again with the next record, and when the place is entered. */
  let waiting: readonly JournalEntry[] = [];
  let writing = Promise.resolve();

  const writeWaiting = async (): Promise<void> => {
    const batch = waiting;
    if (batch.length === 0) return;
    const result = await journal.add(batch);
    // What came while this was being written waits for its own turn.
    if (result.kind === 'kept') waiting = waiting.filter((entry) => !batch.includes(entry));
    if (result.kind === 'refused') refuse(result.reason);
    else if (waiting.length === 0) store.setState({ refused: null });
    desk.desk.setState({ unwritten: result.kind === 'refused' ? result.reason : null });
  };
  /** One after the other, so that no record is taken for kept because another was. */
  const write = (entries: readonly JournalEntry[]): Promise<void> => {
    waiting = [...waiting, ...entries];
    writing = writing.then(writeWaiting).catch(refuse);
    return writing;
  };
  const meet = async (): Promise<void> => {
    try {
      const entries = await journal.between(0, Number.MAX_SAFE_INTEGER);
      store.setState({ ...readEntries([...entries, ...waiting]), loaded: true, refused: null });
      await write([]);
    } catch (error) {
      refuse(error);
    }
  };
  const keep = async (records: readonly JournalRecord[]): Promise<void> => {
    const kept = records.map((record): KeptRecord => ({ id: newId(), record }));
    store.setState(({ records: before }) => ({ records: [...before, ...kept] }));
    await write(kept.map(({ id, record }) => ({ id, at: record.at, text: writeRecord(record) })));
  };
  const open: Journal['open'] = (chart, { fromBar, toBar }) => {
    const loop = (): void => {
      const whole = fromBar === 0 && toBar >= (desk.desk.getState().music?.whole.form.bars.length ?? 0);
      desk.run(whole ? { kind: 'loop off' } : { kind: 'loop bars', loop: { fromBar, toBar } });
      const { music } = desk.desk.getState();
      if (desk.heard() === null) desk.run({ kind: 'start at bar', bar: music?.loop?.fromBar ?? 0 });
    };
    if (desk.desk.getState().chartId === chart) {
      loop();
      return;
    }
    const end = desk.desk.subscribe((state) => {
      if (state.chartId !== chart) return;
      end();
      loop();
    });
    desk.run({ kind: 'open', chartId: chart });
  };

  const studies = createSetStudies(ports, store, open);
  // The place opens without what does not come in time; it is there when it comes.
  await desk.inTime(Promise.all([meet(), studies.meetKnown()]));
  let assignments: Promise<AssignmentRoom> | null = null;
  return {
    store,
    meet,
    ...studies,
    ...createSessions(ports, store, open),
    open,
    assignments: () => {
      assignments ??= ports.openAssignments({ store, open });
      return assignments;
    },
    zone,
    today: () => dayOf(now(), zone(now())),
    hear: async (state, before) => {
      const { report, ratings } = state;
      const rating = ratings !== before.ratings ? ratings.at(-1) : undefined;
      const heard = report && report !== before.report ? passes.ofReport(report, state, now()) : null;
      const pass = heard ?? (rating ? ratedPass(desk, rating, now()) : null);
      if (!pass) return;
      const records = store.getState().records.map(({ record }) => record);
      const check = checkOf(records, pass, zone);
      await keep(check ? [pass, check] : [pass]);
    },
    note: async (text) => {
      const { chartId, music } = desk.desk.getState();
      const record: NoteRecord = { kind: 'note', at: now(), chart: chartId, title: music?.score.title ?? '', text: text.trim() };
      if (record.text !== '') await keep([record]);
    },
    drill: async (drill, right, of, seed) => {
      const { chartId, music } = desk.desk.getState();
      await keep([{ kind: 'drill', at: now(), chart: chartId, title: music?.score.title ?? '', drill, seed, right, of }]);
    },
    remove: async (ids) => {
      const { records } = store.getState();
      const gone = records.filter(({ id }) => ids.includes(id));
      try {
        await journal.remove(ids);
        waiting = waiting.filter(({ id }) => !ids.includes(id));
        const removed = gone.map(({ id, record }): JournalEntry => ({ id, at: record.at, text: writeRecord(record) }));
        store.setState({ records: records.filter(({ id }) => !ids.includes(id)), removed });
      } catch (error) {
        refuse(error);
      }
    },
    undoRemoval: async () => {
      const { removed } = store.getState();
      store.setState({ removed: [] });
      await write(removed);
      await meet();
    },
    saveCsv: (chart) => {
      const records = store.getState().records.map(({ record }) => record);
      const some = chart === undefined ? records : records.filter((record) => record.chart === chart);
      const text = journalCsv(some, JOURNAL_WORDS.columns, JOURNAL_WORDS.plain);
      // Spreadsheets take a file for UTF-8 when it says so.
      ports.saver.save('contratiempo-journal.csv', 'text/csv;charset=utf-8', new TextEncoder().encode(`\uFEFF${text}`));
    },
  };
}

/** Entries as records, oldest first; those that cannot be read are counted. */
function readEntries(entries: readonly JournalEntry[]): Pick<JournalState, 'records' | 'newer' | 'unread'> {
  let [newer, unread] = [0, 0];
  const records = entries.flatMap(({ id, text }): KeptRecord[] => {
    const read = readRecord(text);
    if (read.ok) return [{ id, record: read.value }];
    if (read.faults.some(({ code }) => code === 'newer version')) newer += 1;
    else unread += 1;
    return [];
  });
  return { records, newer, unread };
}
