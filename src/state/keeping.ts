import type { StoreApi } from 'zustand/vanilla';
import type { DeskState } from './desk-state';
import { createPatience, type Patience } from './patience';
import type { Storage, Timer } from './ports';
import { type ChartRecord, chartFrom, decode, encode, lastChartFrom, mergeShelves, type RecordKind, shelfFrom } from './records';
import { DEFAULT_PREFERENCES, type Preferences, type Settings } from './settings';
import { preferencesFrom, settingsFrom } from './settings-record';

/** How long typing may pause before it is kept. */
const AUTOSAVE_MS = 250;
/** After a refused write, how long until it is tried again. */
const RETRY_MS = 10_000;

/** Keeps the desk on this device and brings it back. */
export interface Keeping extends Pick<Patience, 'inTime'> {
  readonly preferences: () => Promise<Preferences>;
  /** Takes over what is kept of the shelf, at the start and when another tab wrote it; what is here alone is written back to it. */
  readonly meetShelf: () => Promise<void>;
  readonly lastChart: () => Promise<string | null>;
  /** A chart as it was last left here, whether the device has it yet or not. */
  readonly chart: (id: string) => Promise<ChartRecord | null>;
  /** A chart as another tab has just written it; null while a text from here waits to be written over it. */
  readonly chartOfOtherTab: (id: string) => Promise<ChartRecord | null>;
  readonly settings: (id: string, fallback: Settings) => Promise<Settings>;
  /** Keeps one more record, like everything else: when typing pauses, and again when the device refused. */
  readonly keep: (key: string, text: () => string | Promise<string>) => void;
  /** Another tab deleted everything: what waits is dropped, and nothing more is written. */
  readonly seal: () => void;
  /** A newer version of the page has written here: what waits stays in memory, and nothing is tried again. */
  readonly giveWay: () => void;
  /** The texts that the device has yet to confirm, by their keys. */
  readonly unconfirmed: () => Promise<ReadonlyMap<string, string>>;
  /** Hands the device at once what waits to be written; resolves when it has everything, or does not answer in time. */
  readonly flush: () => Promise<void>;
}

/** Gives the text of a record when it is written. */
type Text = () => string | Promise<string>;

/**
 * Watches `desk` and writes what changed: text, settings, preferences, shelf and which chart lies open, each in a record of its own,
 * at most `AUTOSAVE_MS` after the change. A record that cannot be read is copied to `quarantine/…` before anything is written in its place.
 * The device may answer late or never: what it was given is remembered here until it has said what became of it.
 */
export function createKeeping(desk: StoreApi<DeskState>, storage: Storage, timer: Timer): Keeping {
  const waiting = new Map<string, Text>();
  /** The newest text of each record that was handed to the device, until it answers. */
  const underWay = new Map<string, { readonly text: Text; readonly answer: Promise<void> }>();
  /** Records of fields that are being read: what is changed before they come is not written over them. */
  const unread = new Set<string>();
  const locked = new Set<string>();
  let cancel: (() => void) | null = null;
  let refusal: string | null = null;
  let lastGood: string | null = null;
  let adopting = false;
  let sealed = false;
  let outdated = false;

  const stateOfKeeping = (): DeskState['keeping'] => {
    if (sealed) return { kind: 'cleared' };
    if (outdated) return { kind: 'newer' };
    if (refusal !== null) return { kind: 'refused', reason: refusal };
    if (patience.isOwed()) return { kind: 'late' };
    return { kind: waiting.size + underWay.size > 0 ? 'waiting' : 'kept' };
  };
  const say = (): void => {
    const before = desk.getState().keeping;
    const now = stateOfKeeping();
    if (now.kind !== before.kind || (now.kind === 'refused' && before.kind === 'refused' && now.reason !== before.reason))
      desk.setState({ keeping: now });
  };
  const patience = createPatience(timer, say);

  /** A record as the device holds it. */
  const held = async (key: string, kind: RecordKind): Promise<unknown> => {
    const found = await storage.read(key);
    if (found.kind === 'refused') {
      refusal = found.reason;
      say();
    }
    return found.kind === 'found' ? bodyOf(key, kind, found.text) : null;
  };

  const bodyOf = async (key: string, kind: RecordKind, text: string): Promise<unknown> => {
    const decoded = decode(kind, text);
    if (decoded.kind === 'good' && !(kind === 'chart' && chartFrom(decoded.body) === null)) return decoded.body;
    const aside = await storage.write(`quarantine/${key}`, text);
    if (aside.kind === 'refused') locked.add(key);
    desk.setState({ putAside: [...new Set([...desk.getState().putAside, key])] });
    return null;
  };

  /** A record as it was last left here: what the device has yet to confirm is newer than what it holds. */
  const body = async (key: string, kind: RecordKind): Promise<unknown> => {
    const own = waiting.get(key) ?? underWay.get(key)?.text;
    return own ? bodyOf(key, kind, await own()) : held(key, kind);
  };

  /**
   * A record whose fields may be changed before it comes. Until then nothing is written over it; once it has come, what waited is dropped:
   * whoever asked lays the changes over it (`underChanges`), which keeps them anew.
   */
  const fields = async (key: string, kind: RecordKind): Promise<unknown> => {
    if (waiting.has(key) || underWay.has(key)) return body(key, kind);
    unread.add(key);
    const found = await held(key, kind);
    unread.delete(key);
    if (found !== null) waiting.delete(key);
    if (waiting.has(key)) schedule();
    say();
    return found;
  };

  const write = async (key: string, text: Text): Promise<void> => {
    const write = await storage.write(key, await text());
    const isNewest = underWay.get(key)?.text === text;
    if (isNewest) underWay.delete(key);
    if (sealed) return;
    if (write.kind === 'refused') {
      if (isNewest && !waiting.has(key)) waiting.set(key, text);
      if (!outdated) cancel ??= timer.after(RETRY_MS, () => void flush());
      refusal = write.reason;
    } else if (waiting.size + underWay.size === 0) refusal = null;
    say();
  };

  const flush = async (): Promise<void> => {
    cancel?.();
    cancel = null;
    for (const [key, text] of [...waiting]) {
      if (unread.has(key)) continue;
      waiting.delete(key);
      if (locked.has(key)) continue;
      underWay.set(key, { text, answer: write(key, text) });
    }
    if (underWay.size > 0) await patience.inTime(Promise.all([...underWay.values()].map(({ answer }) => answer)));
  };

  const schedule = (): void => {
    cancel?.();
    cancel = timer.after(AUTOSAVE_MS, () => void flush());
  };

  const keep = (key: string, text: Text): void => {
    if (sealed) return;
    waiting.set(key, text);
    say();
    schedule();
  };

  /** Another tab may have shelved charts since: theirs stay. */
  const keepShelf = (): void =>
    keep('shelf', async () => encode('shelf', { entries: mergeShelves(desk.getState().shelf, shelfFrom(await held('shelf', 'shelf'))) }));

  const meetShelf = async (): Promise<void> => {
    const kept = shelfFrom(await held('shelf', 'shelf'));
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
    // A text typed over a demo goes on under the settings that were set there.
    if (!sameChart || now.settings !== before.settings) keep(`settings/${now.chartId}`, () => encode('settings', now.settings));
    if (now.preferences !== before.preferences) keep('preferences', () => encode('preferences', now.preferences));
    if (!sameChart) keep('desk', () => encode('desk', { chartId: now.chartId }));
    if (now.shelf !== before.shelf && !adopting) keepShelf();
  });

  return {
    inTime: patience.inTime,
    preferences: async () => preferencesFrom(await fields('preferences', 'preferences'), DEFAULT_PREFERENCES),
    meetShelf,
    lastChart: async () => lastChartFrom(await body('desk', 'desk')),
    chart: async (id) => chartFrom(await body(chartKey(id), 'chart')),
    chartOfOtherTab: async (id) => (waiting.has(chartKey(id)) ? null : chartFrom(await held(chartKey(id), 'chart'))),
    settings: async (id, fallback) => settingsFrom(await fields(`settings/${id}`, 'settings'), fallback),
    keep,
    flush,
    giveWay: () => {
      outdated = true;
      say();
    },
    unconfirmed: async () => {
      const texts = [...[...underWay].map(([key, { text }]) => [key, text] as const), ...waiting];
      return new Map(await Promise.all(texts.map(async ([key, text]) => [key, await text()] as const)));
    },
    seal: () => {
      sealed = true;
      cancel?.();
      waiting.clear();
      say();
    },
  };
}

const chartKey = (id: string): string => `chart/${id}`;
