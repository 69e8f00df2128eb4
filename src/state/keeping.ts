import type { StoreApi } from 'zustand/vanilla';
import type { DeskState } from './desk-state';
import type { Storage } from './ports';
import { type ChartRecord, chartFrom, decode, encode, lastChartFrom, mergeShelves, type RecordKind, shelfFrom } from './records';
import { DEFAULT_PREFERENCES, type Preferences, type Settings } from './settings';
import { preferencesFrom, settingsFrom } from './settings-record';

/** How long typing may pause before it is kept. */
const AUTOSAVE_MS = 250;
/** After a refused write, how long until it is tried again. */
const RETRY_MS = 10_000;

/** Time for the autosave; the browser's in the page, a hand-turned one in tests. */
export interface Timer {
  after(ms: number, action: () => void): () => void;
}

/** Keeps the desk on this device and brings it back. */
export interface Keeping {
  readonly preferences: () => Promise<Preferences>;
  /** Takes over what is kept of the shelf, at the start and when another tab wrote it; what is here alone is written back to it. */
  readonly meetShelf: () => Promise<void>;
  readonly lastChart: () => Promise<string | null>;
  readonly chart: (id: string) => Promise<ChartRecord | null>;
  readonly settings: (id: string, fallback: Settings) => Promise<Settings>;
  /** Keeps one more record, like everything else: when typing pauses, and again when the device refused. */
  readonly keep: (key: string, text: () => string | Promise<string>) => void;
  /** Another tab deleted everything: what waits is dropped, and nothing more is written. */
  readonly seal: () => void;
  /** Writes at once what waits to be written: before the page goes away, and before another chart is opened. */
  readonly flush: () => Promise<void>;
}

/**
 * Watches `desk` and writes what changed: text, settings, preferences, shelf and which chart lies open, each in a record of its own,
 * at most `AUTOSAVE_MS` after the change. A record that cannot be read is copied to `quarantine/…` before anything is written in its place.
 */
export function createKeeping(desk: StoreApi<DeskState>, storage: Storage, timer: Timer): Keeping {
  const waiting = new Map<string, () => string | Promise<string>>();
  const locked = new Set<string>();
  let cancel: (() => void) | null = null;
  let writing = Promise.resolve();
  let lastGood: string | null = null;
  let adopting = false;
  let sealed = false;

  const body = async (key: string, kind: RecordKind): Promise<unknown> => {
    // What the device has refused so far is newer than what it holds. The shelf is merged with what it holds instead.
    const pending = kind === 'shelf' ? undefined : waiting.get(key);
    const found = pending ? ({ kind: 'found', text: await pending() } as const) : await storage.read(key);
    if (found.kind === 'refused') desk.setState({ keeping: { kind: 'refused', reason: found.reason } });
    if (found.kind !== 'found') return null;
    const decoded = decode(kind, found.text);
    if (decoded.kind === 'good' && !(kind === 'chart' && chartFrom(decoded.body) === null)) return decoded.body;
    const aside = await storage.write(`quarantine/${key}`, found.text);
    if (aside.kind === 'refused') locked.add(key);
    desk.setState({ putAside: [...new Set([...desk.getState().putAside, key])] });
    return null;
  };

  const writeWaiting = async (): Promise<void> => {
    if (sealed) return;
    const writes = [...waiting].filter(([key]) => !locked.has(key));
    waiting.clear();
    const refusals = await Promise.all(
      writes.map(async ([key, text]) => {
        const write = await storage.write(key, await text());
        if (write.kind === 'kept') return [];
        if (!waiting.has(key)) waiting.set(key, text);
        return [write.reason];
      }),
    );
    if (sealed) return;
    const [reason] = refusals.flat();
    if (reason !== undefined) {
      cancel ??= timer.after(RETRY_MS, () => void flush());
      desk.setState({ keeping: { kind: 'refused', reason } });
    } else if (waiting.size === 0 && writes.length > 0) desk.setState({ keeping: { kind: 'kept' } });
  };

  /** One after the other, so that an older text is never written over a newer one. */
  const flush = (): Promise<void> => {
    cancel?.();
    cancel = null;
    writing = writing.then(writeWaiting);
    return writing;
  };

  const keep = (key: string, text: () => string | Promise<string>): void => {
    if (sealed) return;
    waiting.set(key, text);
    if (desk.getState().keeping.kind === 'kept') desk.setState({ keeping: { kind: 'waiting' } });
    cancel?.();
    cancel = timer.after(AUTOSAVE_MS, () => void flush());
  };

  /** Another tab may have shelved charts since: theirs stay. */
  const keepShelf = (): void =>
    keep('shelf', async () => encode('shelf', { entries: mergeShelves(desk.getState().shelf, shelfFrom(await body('shelf', 'shelf'))) }));

  const meetShelf = async (): Promise<void> => {
    const kept = shelfFrom(await body('shelf', 'shelf'));
    const shelf = mergeShelves(desk.getState().shelf, kept);
    adopting = true;
    desk.setState({ shelf });
    adopting = false;
    if (shelf.length > kept.length) keepShelf();
  };

  desk.subscribe((now, before) => {
    const sameChart = now.chartId === before.chartId;
    if (now.music !== before.music && now.faults.length === 0) lastGood = now.text;
    // A chart that is opened is kept already.
    if (sameChart ? now.text !== before.text : now.text !== now.openedText) {
      const record: ChartRecord = { text: now.text, good: now.faults.length > 0 ? lastGood : null };
      keep(chartKey(now.chartId), () => encode('chart', record));
    }
    if (now.settings !== before.settings) keep(`settings/${now.chartId}`, () => encode('settings', now.settings));
    if (now.preferences !== before.preferences) keep('preferences', () => encode('preferences', now.preferences));
    if (!sameChart) keep('desk', () => encode('desk', { chartId: now.chartId }));
    if (now.shelf !== before.shelf && !adopting) keepShelf();
  });

  return {
    preferences: async () => preferencesFrom(await body('preferences', 'preferences'), DEFAULT_PREFERENCES),
    meetShelf,
    lastChart: async () => lastChartFrom(await body('desk', 'desk')),
    chart: async (id) => chartFrom(await body(chartKey(id), 'chart')),
    settings: async (id, fallback) => settingsFrom(await body(`settings/${id}`, 'settings'), fallback),
    keep,
    flush,
    seal: () => {
      sealed = true;
      cancel?.();
      waiting.clear();
      desk.setState({ keeping: { kind: 'cleared' } });
    },
  };
}

const chartKey = (id: string): string => `chart/${id}`;
