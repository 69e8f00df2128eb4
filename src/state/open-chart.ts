import type { StoreApi } from 'zustand/vanilla';
import { NEW_CHART, titleOf } from './chart-text';
import type { DemoChart, DeskState, OtherTab, ShelfEntry } from './desk-state';
import type { Keeping } from './keeping';
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

  const open = async (chartId: string): Promise<void> => {
    await keeping.flush();
    const isIt = ({ id }: DemoChart): boolean => id === chartId;
    if (chartId.startsWith('demo-') && !demos.some(isIt)) await fetchDemos();
    const demo = demos.find(isIt);
    const record: ChartRecord | null = demo ? { text: demo.text, good: null } : await keeping.chart(chartId);
    if (!record) return;
    stop();
    putOn(chartId, record, record.text, await keeping.settings(chartId, freshSettings(record.good ?? record.text)));
  };

  const part = (otherTab: OtherTab | null): void => {
    const { text, settings, shelf } = store.getState();
    const entry = entryFor(newId(), text);
    store.setState({ chartId: entry.id, openedText: null, settings: { ...settings }, otherTab, shelf: [entry, ...shelf] });
  };

  return {
    open,
    part,
    newChart: () => {
      stop();
      void keeping.flush();
      const entry = entryFor(newId(), NEW_CHART);
      putOn(entry.id, { text: NEW_CHART, good: null }, null, freshSettings(NEW_CHART));
      store.setState({ shelf: [entry, ...store.getState().shelf] });
    },
    putQuick: (text) => {
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
        keeping: after.keeping.kind === 'cleared' ? after.keeping : { kind: 'waiting' },
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
