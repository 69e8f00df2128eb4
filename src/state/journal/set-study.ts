import type { StoreApi } from 'zustand/vanilla';
import type { Score } from '../../music/score';
import { planSet } from '../../practice/set-planner';
import type { SetList } from '../library/set-list';
import { optionsOf } from '../pipeline';
import { decode } from '../records';
import { settingsForChart } from '../reduce';
import { fieldsOf } from '../saved-fields';
import { DEFAULT_SETTINGS } from '../settings';
import { settingsFrom } from '../settings-record';
import { NO_NOTES, notesFrom, notesKey, type SheetNotes } from '../sheet/sheet-notes';
import type { JournalPorts, JournalState, MoveToDrill } from './journal-state';

/** A chart of the set that was studied, as it would be played, for its pencil list. */
export interface SetChart {
  readonly id: string;
  readonly score: Score;
  /** Half notes a minute. */
  readonly goal: number;
  /** Bars of its list after which a line ends, from 1; null for four bars a line. */
  readonly breaks: readonly number[] | null;
}

/** Five charts, two evenings: what a set list asks of the hand. */
export interface SetStudies {
  readonly meetKnown: () => Promise<void>;
  /** Arranges every chart of a set as it would be played, and counts its hand moves. */
  readonly studySet: (set: SetList) => Promise<void>;
  /** The charts that were studied last, in the order of their set, for their pencil lists; what cannot be read is not among them. */
  readonly setCharts: () => Promise<readonly SetChart[]>;
  readonly tick: (move: string, known: boolean) => void;
  /** Opens the chart where a move first occurs, with the cycle that holds it looped. */
  readonly drillMove: (move: MoveToDrill) => void;
}

const KEY = 'known-moves';
const VERSION = 1;

/** The acts on hand moves; what is ticked off is kept in one record. */
export function createSetStudies(
  { desk, storage, stages }: JournalPorts,
  store: StoreApi<JournalState>,
  open: (chart: string, bars: { readonly fromBar: number; readonly toBar: number }) => void,
): SetStudies {
  let charts: readonly Omit<SetChart, 'breaks'>[] = [];
  let wanted = 0;

  const played = async (id: string, text: string): Promise<Omit<SetChart, 'breaks'> | null> => {
    const reading = stages.readChart(text);
    if (!reading.ok) return null;
    const found = await storage.read(`settings/${id}`);
    const saved = found.kind === 'found' ? decode('settings', found.text) : null;
    const fresh = settingsForChart(reading.value, DEFAULT_SETTINGS);
    const settings = saved?.kind === 'good' ? settingsFrom(saved.body, fresh) : fresh;
    try {
      // As on the desk: what is played once has no way back to its first bar.
      const closed = settings.round !== 'once, then end';
      return { id, score: stages.arrange(reading.value, optionsOf(settings, closed, null)), goal: settings.goalTempo };
    } catch {
      return null;
    }
  };

  const keepKnown = (): void => desk.keep(KEY, () => JSON.stringify({ version: VERSION, moves: [...store.getState().known] }));

  return {
    meetKnown: async () => {
      const found = await storage.read(KEY);
      if (found.kind !== 'found') return;
      const since = store.getState().known;
      store.setState({ known: new Set([...knownFrom(found.text), ...since]) });
      if (since.size > 0) keepKnown();
    },
    studySet: async (set) => {
      wanted += 1;
      const mine = wanted;
      store.setState({ study: null });
      await desk.flush();
      const library = await desk.rooms.library();
      const found: Omit<SetChart, 'breaks'>[] = [];
      const unread: string[] = [];
      for (const id of new Set(set.charts)) {
        const text = library.textOf(id);
        const chart = text === '' ? null : await played(id, text);
        if (chart) found.push(chart);
        else unread.push(/^[ \t]*title[ \t]*:[ \t]*(.*)$/im.exec(text)?.[1]?.trim() ?? id);
        if (mine !== wanted) return;
      }
      charts = found;
      store.setState({ study: { set: set.id, plan: planSet(charts, store.getState().known), unread } });
    },
    setCharts: () =>
      Promise.all(
        charts.map(async (chart) => {
          const found = await storage.read(notesKey(chart.id));
          return { ...chart, breaks: found.kind === 'found' ? notesOf(found.text).breaks : null };
        }),
      ),
    tick: (move, isKnown) => {
      const known = new Set(store.getState().known);
      if (isKnown) known.add(move);
      else known.delete(move);
      const { study } = store.getState();
      store.setState({ known, study: study && { ...study, plan: planSet(charts, known) } });
      keepKnown();
    },
    drillMove: ({ first }) => open(first.chart, { fromBar: Math.max(0, first.bar - 1), toBar: first.bar + 1 }),
  };
}

function notesOf(text: string): SheetNotes {
  try {
    return notesFrom(JSON.parse(text));
  } catch {
    return NO_NOTES;
  }
}

/** The ticked moves out of a kept record; none out of one that cannot be read. */
function knownFrom(text: string): ReadonlySet<string> {
  try {
    const { moves } = fieldsOf(JSON.parse(text));
    return new Set(Array.isArray(moves) ? moves.filter((move): move is string => typeof move === 'string') : []);
  } catch {
    return new Set();
  }
}
