import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Storage } from '../ports';
import { fieldsOf } from '../saved-fields';
import { HINTS, type Hint, PEDAL_ACTIONS, type PedalAction, ROWS } from './names';

/** What a player settles once on this device, beside the preferences that every chart shares. */
export interface Habits {
  /** `KeyboardEvent.key` by what it does; null for none. Page Up and Page Down always turn pages. */
  readonly pedals: Readonly<Record<PedalAction, string | null>>;
  /** Hints that are gone for good. */
  readonly seen: readonly Hint[];
  readonly percussionRows: (typeof ROWS)[number];
  readonly strip: boolean;
  /** Charts, by id, whose notices were put away for good. */
  readonly knownCharts: readonly string[];
}

/** The habits of someone who has settled nothing. */
export const DEFAULT_HABITS: Habits = {
  pedals: { forward: null, back: null, 'play or stop': null },
  seen: [],
  percussionRows: 'where there is room',
  strip: true,
  knownCharts: [],
};

/** Keys that no pedal may take: they move the focus, leave a panel or write text. */
const TAKEN = ['Tab', 'Escape', 'Shift', 'Control', 'Alt', 'Meta'];

/** The habits and the way to change them. */
export interface HabitsRoom {
  readonly habits: StoreApi<Habits>;
  readonly change: (change: Partial<Habits>) => void;
  /** Gives a key to a pedal's action and takes it from any other; false when the key cannot be given away. */
  readonly mapPedal: (action: PedalAction, key: string | null) => boolean;
  readonly markSeen: (hint: Hint) => void;
}

/** So many charts' notices stay put away. */
const MOST_KNOWN = 500;

const KEY = 'habits';
const VERSION = 1;

/** Brings back what was kept. A record that cannot be read is copied to `quarantine/habits` before anything is written in its place. */
export async function createHabits(storage: Storage): Promise<HabitsRoom> {
  const found = await storage.read(KEY);
  const kept = found.kind === 'found' ? habitsFrom(found.text) : DEFAULT_HABITS;
  if (found.kind === 'found' && kept === null) await storage.write(`quarantine/${KEY}`, found.text);
  const habits = createStore<Habits>(() => kept ?? DEFAULT_HABITS);
  const change = (part: Partial<Habits>): void => {
    habits.setState(part);
    void storage.write(KEY, JSON.stringify({ record: KEY, version: VERSION, body: habits.getState() }));
  };
  return {
    habits,
    change,
    mapPedal: (action, key) => {
      if (key !== null && TAKEN.includes(key)) return false;
      const { pedals } = habits.getState();
      const freed = Object.fromEntries(PEDAL_ACTIONS.map((each) => [each, pedals[each] === key ? null : pedals[each]]));
      change({ pedals: { ...(freed as Habits['pedals']), [action]: key } });
      return true;
    },
    markSeen: (hint) => {
      const { seen } = habits.getState();
      if (!seen.includes(hint)) change({ seen: [...seen, hint] });
    },
  };
}

/** Habits out of a record's text: every good field, the default for any other; null for what is no such record. */
export function habitsFrom(text: string): Habits | null {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return null;
  }
  const record = fieldsOf(parsed);
  if (record.record !== KEY || record.version !== VERSION) return null;
  const body = fieldsOf(record.body);
  const pedals = fieldsOf(body.pedals);
  const key = (action: PedalAction): string | null => {
    const value = pedals[action];
    return typeof value === 'string' && !TAKEN.includes(value) ? value : null;
  };
  const seen: readonly unknown[] = Array.isArray(body.seen) ? body.seen : [];
  const known: readonly unknown[] = Array.isArray(body.knownCharts) ? body.knownCharts : [];
  return {
    pedals: { forward: key('forward'), back: key('back'), 'play or stop': key('play or stop') },
    seen: HINTS.filter((hint) => seen.includes(hint)),
    percussionRows: ROWS.find((rows) => rows === body.percussionRows) ?? DEFAULT_HABITS.percussionRows,
    strip: typeof body.strip === 'boolean' ? body.strip : DEFAULT_HABITS.strip,
    knownCharts: known.filter((id) => typeof id === 'string').slice(-MOST_KNOWN),
  };
}
