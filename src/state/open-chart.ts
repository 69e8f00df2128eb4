import type { StoreApi } from 'zustand/vanilla';
import { NEW_CHART, titleOf } from './chart-text';
import type { DemoChart, DeskState, OtherTab, ShelfEntry } from './desk-state';
import type { Keeping } from './keeping';
import { underChanges } from './patience';
import type { Pipeline } from './pipeline';
import type { ChartRecord } from './records';
import { remake, settingsForChart, withText } from './reduce';
import { bothHands, DEFAULT_SETTINGS, type Settings } from './settings';

/** What opening a chart needs of the desk. */
export interface OpenerParts {
  readonly store: StoreApi<DeskState>;
  readonly keeping: Keeping;
  readonly pipeline: Pipeline;
  readonly demos: readonly DemoChart[];
  /** Fetches the rest of the demo book into `demos`. */
  readonly fetchDemos: () => Promise<void>;
  readonly now: () => number;
  readonly newId: () => string;
  /** Silences the chart that lies on the desk. */
  readonly stop: () => void;
}

/** Puts charts on the desk and sees to it that no text is lost when another takes its place. */
export interface Opener {
  readonly open: (chartId: string) => Promise<void>;
  readonly newChart: () => void;
  /** Puts text on the desk that belongs to no shelf, under fresh settings. */
  readonly putQuick: (text: string) => void;
  /** `after` with its typed text on the player's own shelf; text typed over a demo or the quick line becomes a chart of its own. */
  readonly shelved: (after: DeskState, before: DeskState) => DeskState;
  /** Another tab saved `text` under the id of the chart that lies here. */
  readonly meetOtherTab: (chartId: string, text: string) => void;
  /** What lies here goes on as a chart of its own, so that neither tab overwrites the other. */
  readonly part: (otherTab: OtherTab | null) => void;
}

/** What opens a chart from the shelf or the demo book without losing the one on the desk. */
export function createOpener({ store, keeping, pipeline, demos, fetchDemos, now, newId, stop }: OpenerParts): Opener {
  const entryFor = (id: string, text: string): ShelfEntry => ({ id, title: titleOf(text), changed: now() });

  const freshSettings = (text: string): Settings => {
    const reading = pipeline.read(text);
    const { settings } = store.getState();
    const { balance, view, countInBars } = settings;
    // Loudness and view are the player's own; both hands sound in a chart that is new.
    const own = { ...DEFAULT_SETTINGS, view, countInBars, balance: bothHands(balance) };
    return reading.ok ? settingsForChart(reading.value, own) : settings;
  };

  const putOn = (chartId: string, record: ChartRecord, openedText: string | null, settings: Settings): void => {
    const { text } = record;
    const good = record.good ?? text;
    const base: DeskState = {
      ...store.getState(),
      chartId,
      text: good,
      openedText,
      settings,
      trouble: null,
      otherTab: null,
      announcement: null,
    };
    store.setState(remake(base, pipeline));
    if (text !== good) store.setState(withText(store.getState(), text, pipeline));
  };

  /** Counts what was put on the desk or asked for, so that an answer that comes late puts nothing over it. */
  let turn = 0;

  const open = async (chartId: string): Promise<void> => {
    turn += 1;
    const mine = turn;
    const { text: typed } = store.getState();
    void keeping.flush();
    const isIt = ({ id }: DemoChart): boolean => id === chartId;
    if (chartId.startsWith('demo-') && !demos.some(isIt)) await fetchDemos();
    const demo = demos.find(isIt);
    const asked = demo ? Promise.resolve<ChartRecord>({ text: demo.text, good: null }) : keeping.chart(chartId);
    // Waited for as long as it takes, so that it is said when it takes long.
    void keeping.inTime(asked);
    const record = await asked;
    if (!record) return;
    const fresh = freshSettings(record.good ?? record.text);
    const kept = keeping.settings(chartId, fresh);
    const known = await keeping.inTime(kept);
    if (mine !== turn || store.getState().text !== typed) return;
    stop();
    putOn(chartId, record, record.text, known ? await kept : fresh);
    if (!known) void kept.then((settings) => meetSettings(chartId, settings, fresh));
  };

  /** Settings that come late go under what was changed since. */
  const meetSettings = (chartId: string, kept: Settings, fresh: Settings): void => {
    const state = store.getState();
    if (state.chartId === chartId) store.setState(remake({ ...state, settings: underChanges(kept, fresh, state.settings) }, pipeline));
  };

  const part = (otherTab: OtherTab | null): void => {
    const { text, shelf } = store.getState();
    const entry = entryFor(newId(), text);
    store.setState({ chartId: entry.id, openedText: null, otherTab, shelf: [entry, ...shelf] });
  };

  return {
    open,
    part,
    newChart: () => {
      turn += 1;
      stop();
      void keeping.flush();
      const entry = entryFor(newId(), NEW_CHART);
      putOn(entry.id, { text: NEW_CHART, good: null }, null, freshSettings(NEW_CHART));
      store.setState({ shelf: [entry, ...store.getState().shelf] });
    },
    putQuick: (text) => {
      turn += 1;
      stop();
      void keeping.flush();
      putOn('quick', { text, good: null }, null, freshSettings(text));
    },
    shelved: (after, before) => {
      const own = !before.chartId.startsWith('demo-') && before.chartId !== 'quick';
      const entry = entryFor(own ? before.chartId : newId(), after.text);
      return {
        ...after,
        chartId: entry.id,
        shelf: [entry, ...after.shelf.filter(({ id }) => id !== entry.id)],
      };
    },
    meetOtherTab: (chartId, text) => {
      const state = store.getState();
      if (state.chartId !== chartId || state.text === text) return;
      if (state.text === state.openedText) store.setState({ otherTab: { kind: 'fresh', chartId, text } });
      else part({ kind: 'parted', chartId, text });
    },
  };
}
