import type { StoreApi } from 'zustand/vanilla';
import { NEW_CHART, titleOf } from './chart-text';
import type { DemoChart, DeskState, OtherTab, ShelfEntry } from './desk-state';
import type { Keeping } from './keeping';
import type { Pipeline } from './pipeline';
import { remake, settingsForChart, withText } from './reduce';
import { DEFAULT_SETTINGS, type Settings } from './settings';

/** What opening a chart needs of the desk. */
export interface OpenerParts {
  readonly store: StoreApi<DeskState>;
  readonly keeping: Keeping;
  readonly pipeline: Pipeline;
  readonly demos: readonly DemoChart[];
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

export function createOpener({ store, keeping, pipeline, demos, now, newId, stop }: OpenerParts): Opener {
  /** The text as it was opened: another text now means that something was typed here. */
  let opened = store.getState().text;

  const entryFor = (id: string, text: string): ShelfEntry => ({ id, title: titleOf(text), changed: now() });

  const freshSettings = (text: string): Settings => {
    const reading = pipeline.read(text);
    const { settings } = store.getState();
    const { balance, view, countInBars } = settings;
    return reading.ok ? settingsForChart(reading.value, { ...DEFAULT_SETTINGS, balance, view, countInBars }) : settings;
  };

  const putOn = (chartId: string, text: string, good: string, settings: Settings): void => {
    const base: DeskState = { ...store.getState(), chartId, text: good, settings, trouble: null, otherTab: null, announcement: null };
    const made = remake(base, pipeline);
    opened = text;
    store.setState(text === good ? made : withText(made, text, pipeline));
  };

  const open = async (chartId: string): Promise<void> => {
    const demo = demos.find(({ id }) => id === chartId);
    const record = demo ? { text: demo.text, good: null } : await keeping.chart(chartId);
    if (!record) return;
    stop();
    await keeping.flush();
    const good = record.good ?? record.text;
    putOn(chartId, record.text, good, await keeping.settings(chartId, freshSettings(good)));
  };

  const part = (otherTab: OtherTab | null): void => {
    const { text, settings, shelf } = store.getState();
    const entry = entryFor(newId(), text);
    opened = '';
    // Set anew in two steps, so that the text and the settings are seen as changed and written under the new id.
    store.setState({ chartId: entry.id, text: '', otherTab, shelf: [entry, ...shelf] });
    store.setState({ text, settings: { ...settings } });
  };

  return {
    open,
    part,
    newChart: () => {
      stop();
      void keeping.flush();
      const entry = entryFor(newId(), NEW_CHART);
      putOn(entry.id, NEW_CHART, NEW_CHART, freshSettings(NEW_CHART));
      store.setState({ shelf: [entry, ...store.getState().shelf] });
    },
    putQuick: (text) => {
      stop();
      void keeping.flush();
      putOn('quick', text, text, freshSettings(text));
    },
    shelved: (after, before) => {
      const own = !before.chartId.startsWith('demo-') && before.chartId !== 'quick';
      const entry = entryFor(own ? before.chartId : newId(), after.text);
      return {
        ...after,
        chartId: entry.id,
        keeping: { kind: 'waiting' },
        shelf: [entry, ...after.shelf.filter(({ id }) => id !== entry.id)],
      };
    },
    meetOtherTab: (chartId, text) => {
      const state = store.getState();
      if (state.chartId !== chartId || state.text === text) return;
      if (state.text === opened) store.setState({ otherTab: { kind: 'fresh', chartId, text } });
      else part({ kind: 'parted', chartId, text });
    },
  };
}
