import { createStore, type StoreApi } from 'zustand/vanilla';
import {
  type Assignment,
  assignmentFileName,
  LONGEST_FILE,
  type Results,
  resultsFileName,
  writeAssignment,
  writeResults,
} from '../../exchange/assignment/assignment';
import { makeAssignmentLink, readAssignmentLink } from '../../exchange/assignment/assignment-link';
import { contentId } from '../../exchange/assignment/content-id';
import { type AssignmentFault, readAssignmentFile } from '../../exchange/assignment/read-assignment';
import type { LinkFault } from '../../exchange/link/lesson';
import { MAX_SOUNDING_BARS } from '../../music/chart/limits';
import { readChart } from '../../music/chart/read';
import { unfold } from '../../music/chart/unfold';
import { failed, halfNotesPerMinute, ok, type Result } from '../../vocabulary';
import { ASSIGNMENT_WORDS } from '../../words/assignment';
import { titleOf } from '../chart-text';
import type { JournalState } from '../journal/journal-state';
import { keysOf } from '../keys-of';
import type { Library } from '../library/library';
import type { DeskOfRoom } from '../library/parts';
import { madeLink } from '../link/link-room';
import type { FileSaver, Storage } from '../ports';
import { encode } from '../records';
import { settingsForChart } from '../reduce';
import { DEFAULT_SETTINGS, type Settings } from '../settings';
import { settingsFrom } from '../settings-record';
import type { AssignmentRoom, AssignmentState, OfferedAssignment, Order, RefusedFile } from './assignment-state';
import { ASSIGNMENTS_KEY, type KeptAssignment, readKept, withCharts, writeKept } from './kept-assignments';
import { resultsOf } from './progress';

/** What the room needs of the journal: its records, and a way to loop bars of a chart. */
export interface JournalOfRoom {
  readonly store: StoreApi<JournalState>;
  readonly open: (chart: string, bars: { readonly fromBar: number; readonly toBar: number }) => void;
}

/** What the room asks of the desk and the world. */
export interface AssignmentParts {
  readonly desk: Pick<DeskOfRoom, 'desk' | 'run' | 'keep' | 'flush'> & {
    readonly rooms: { readonly library: () => Promise<Pick<Library, 'add' | 'textOf' | 'restore'>> };
  };
  readonly journal: JournalOfRoom;
  readonly storage: Storage;
  readonly saver: FileSaver;
  readonly now: () => number;
}

const JSON_TYPE = 'application/json';

/** Opens the room; what was accepted before is read from this device. */
export async function createAssignmentRoom({ desk, journal, storage, saver, now }: AssignmentParts): Promise<AssignmentRoom> {
  const held = async (): Promise<string | null> => {
    const found = await storage.read(ASSIGNMENTS_KEY);
    return found.kind === 'found' ? found.text : null;
  };
  const read = readKept(await held());
  /** Everything accepted, put away or not. */
  let all = read.kind === 'good' ? read.list : [];
  const present = (): readonly KeptAssignment[] => all.filter(({ removed }) => !removed);
  const store = createStore<AssignmentState>(() => ({
    kept: present(),
    newer: read.kind === 'newer',
    offer: null,
    refused: [],
    refusedLink: null,
    come: false,
    results: [],
    putAway: null,
  }));
  const put = (kept: KeptAssignment): void => {
    all = [kept, ...all.filter(({ id }) => id !== kept.id)];
    store.setState({ kept: present() });
    desk.keep(ASSIGNMENTS_KEY, async () => {
      const before = await held();
      return writeKept(all, before) ?? before ?? '';
    });
  };
  const save = (name: string, text: string): void => saver.save(name, JSON_TYPE, new TextEncoder().encode(text));

  /** The chart of an assignment on the shelf: where it was, brought back, or put there anew. */
  const chartOn = async (assignment: Assignment, before: string | null): Promise<string> => {
    const library = await desk.rooms.library();
    if (before !== null && library.textOf(before) !== '') {
      if (desk.desk.getState().shelf.some(({ id, removed }) => id === before && removed)) library.restore(before);
      return before;
    }
    const id = library.add(assignment.text);
    desk.keep(`settings/${id}`, () => encode('settings', settingsOf(assignment)));
    return id;
  };

  const open: AssignmentRoom['open'] = async (kept) => {
    const { assignment } = kept;
    const chart = await chartOn(assignment, kept.chart);
    if (chart !== kept.chart) put(withCharts({ ...kept, chart, changed: now() }, [kept.chart]));
    const { direction, kind, level, hands, transpose } = assignment;
    const settings = { direction, kind, level, hands, transpose, goalTempo: halfNotesPerMinute(assignment.goalTempo) };
    const begin = (): void => {
      desk.run({ kind: 'set', settings });
      journal.open(chart, assignment.loop ?? { fromBar: 0, toBar: MAX_SOUNDING_BARS });
    };
    if (desk.desk.getState().chartId === chart) return begin();
    await new Promise<void>((opened) => {
      const end = desk.desk.subscribe((state) => {
        if (state.chartId !== chart) return;
        end();
        opened();
      });
      desk.run({ kind: 'open', chartId: chart });
    });
    begin();
  };

  /** The chart on the desk under its settings, and what the teacher says beyond. */
  const ordered = ({ bars, passes, drill, due, note, goalTempo }: Order): Assignment => {
    const { text, settings } = desk.desk.getState();
    const { direction, kind, level, hands, transpose, tempo } = settings;
    const loop = bars === 'loop' ? settings.loop : null;
    const set = { direction, kind, level, hands, transpose, tempo, goalTempo, loop };
    const asked = { title: titleOf(text), text, note: note.trim(), ...set, passes, drill, due };
    return { id: contentId(asked), ...asked };
  };

  return {
    store,
    open,
    ordered,
    make: (order) => {
      const assignment = ordered(order);
      save(assignmentFileName(assignment), writeAssignment(assignment));
    },
    makeLink: (order, page) => madeLink(makeAssignmentLink(ordered(order)), page),
    look: (hash) => {
      const read = readAssignmentLink(hash);
      const offered = read.ok ? offerOf(read.value, all) : read;
      if (offered.ok) return store.setState({ offer: offered.value, refused: [], refusedLink: null, come: true });
      const inFile = offered.faults.filter(isOfFile);
      const ofLink = offered.faults.find((fault) => !isOfFile(fault)) as LinkFault | undefined;
      const refused = inFile.length > 0 ? [{ id: 0, name: ASSIGNMENT_WORDS.theLink, faults: inFile }] : [];
      store.setState({ offer: null, refused, refusedLink: ofLink ?? null, come: true });
    },
    give: (files) => {
      const refused: RefusedFile[] = [];
      const results: Results[] = [];
      let offer: OfferedAssignment | null = null;
      for (const [id, { name, bytes }] of files.entries()) {
        const file = bytes.length > LONGEST_FILE ? failed({ code: 'too long', found: bytes.length } as const) : fromBytes(bytes);
        if (!file.ok) refused.push({ id, name, faults: file.faults });
        else if (file.value.kind === 'results') results.push(file.value.results);
        else {
          const offered = offerOf(file.value.assignment, all);
          if (offered.ok) offer = offered.value;
          else refused.push({ id, name, faults: offered.faults });
        }
      }
      // Opened twice, it is one row.
      const table = new Map([...store.getState().results, ...results].map((one) => [JSON.stringify(one), one]));
      store.setState({ refused, refusedLink: null, come: true, results: [...table.values()], ...(offer && { offer }) });
    },
    seen: () => {
      if (store.getState().come) store.setState({ come: false });
    },
    leave: () => store.setState({ offer: null, refused: [], refusedLink: null }),
    take: async () => {
      const { offer, newer } = store.getState();
      if (!offer || newer) return;
      const { assignment } = offer;
      store.setState({ offer: null, refused: [], refusedLink: null });
      const id = contentId(assignment);
      const before = all.find((kept) => kept.id === id);
      const chart = await chartOn(assignment, before?.chart ?? null);
      // One that was accepted before goes on from where it was.
      const at = now();
      const kept = { id, assignment: before?.assignment ?? assignment, chart, taken: before?.taken ?? at, changed: at };
      put(withCharts(kept, before ? [before.chart, ...(before.also ?? [])] : []));
      await desk.flush();
    },
    putAway: (kept) => {
      put({ ...kept, changed: now(), removed: true });
      store.setState({ putAway: kept });
    },
    bringBack: () => {
      const { putAway } = store.getState();
      store.setState({ putAway: null });
      if (putAway) put({ ...putAway, changed: now() });
    },
    saveResults: (kept, said) => {
      const records = journal.store.getState().records.map(({ record }) => record);
      const results = resultsOf(kept, records, { who: said.who.trim(), words: said.words.trim(), made: now() });
      save(resultsFileName(results), writeResults(results));
    },
    clearResults: () => store.setState({ results: [] }),
  };
}

/** Faults of the file in a link have what was found as a word, or stand in a field. */
const isOfFile = (fault: LinkFault | AssignmentFault): fault is AssignmentFault =>
  fault.code === 'field' || typeof fault.found === 'string';

const fromBytes = (bytes: Uint8Array) => readAssignmentFile(new TextDecoder().decode(bytes));

function settingsOf(assignment: Assignment): Settings {
  const reading = readChart(assignment.text);
  const base = reading.ok ? settingsForChart(reading.value, DEFAULT_SETTINGS) : DEFAULT_SETTINGS;
  return settingsFrom({ ...base, ...assignment }, base);
}

/** What is shown of an assignment, or the fault that its bars are not there. */
function offerOf(assignment: Assignment, all: readonly KeptAssignment[]): Result<OfferedAssignment, AssignmentFault> {
  const reading = readChart(assignment.text);
  const same = contentId(assignment);
  const known = all.some(({ id, removed }) => id === same && !removed);
  if (!reading.ok) return ok({ assignment, bars: null, key: null, faults: reading.faults.length, known });
  const bars = unfold(reading.value).bars.length;
  if (assignment.loop && assignment.loop.toBar > bars) {
    const expected = { kind: 'number', low: 1, high: bars, whole: true } as const;
    return failed({ code: 'field', path: 'loop.toBar', expected, found: String(assignment.loop.toBar) });
  }
  return ok({ assignment, bars, key: keysOf(reading.value)[assignment.transpose] ?? null, faults: 0, known });
}
