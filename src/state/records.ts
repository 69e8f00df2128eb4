import type { ShelfEntry } from './desk-state';
import { fieldsOf } from './saved-fields';

/** Version of every record written now; older ones are brought forward by `decode`, newer ones are left alone. */
export const RECORD_VERSION = 1;

/** The kinds of things that are kept on the device. */
export type RecordKind = 'chart' | 'settings' | 'preferences' | 'shelf' | 'desk' | 'sets' | 'safety' | 'offline' | 'assignments';

/** What came out of a saved record. `newer` was written by a later version of the program; `corrupt` is no record at all. */
export type Decoded = { readonly kind: 'good'; readonly body: unknown } | { readonly kind: 'newer' } | { readonly kind: 'corrupt' };

/** The text that is saved for a record. */
export function encode(kind: RecordKind, body: unknown): string {
  return JSON.stringify({ record: kind, version: RECORD_VERSION, body });
}

/** Reads the text of a saved record of a known kind. */
export function decode(kind: RecordKind, text: string): Decoded {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return { kind: 'corrupt' };
  }
  const fields = fieldsOf(parsed);
  if (fields.record !== kind || typeof fields.version !== 'number') return { kind: 'corrupt' };
  if (fields.version > RECORD_VERSION) return { kind: 'newer' };
  return { kind: 'good', body: fields.body };
}

/** A saved chart: its text as typed, and the last text without faults where that is another. */
export interface ChartRecord {
  readonly text: string;
  readonly good: string | null;
}

/** A chart out of a record's body, or null when it holds no text. */
export function chartFrom(body: unknown): ChartRecord | null {
  const fields = fieldsOf(body);
  if (typeof fields.text !== 'string') return null;
  return { text: fields.text, good: typeof fields.good === 'string' ? fields.good : null };
}

/** Shelf entries out of a record's body: the good ones, newest first, each id once. */
export function shelfFrom(body: unknown): readonly ShelfEntry[] {
  const entries = fieldsOf(body).entries;
  if (!Array.isArray(entries)) return [];
  const good = entries
    .map(fieldsOf)
    .flatMap(({ id, title, changed, removed }): ShelfEntry[] =>
      typeof id === 'string' && typeof title === 'string' && typeof changed === 'number'
        ? [{ id, title, changed: Number.isFinite(changed) ? changed : 0, ...(removed === true && { removed }) }]
        : [],
    );
  return mergeShelves(good, []);
}

/** Two shelves as one: of an entry that is on both, the newer; newest first. */
export function mergeShelves<Entry extends { readonly id: string; readonly changed: number }>(
  a: readonly Entry[],
  b: readonly Entry[],
): readonly Entry[] {
  const newest = new Map<string, Entry>();
  for (const entry of [...a, ...b]) {
    const other = newest.get(entry.id);
    if (!other || entry.changed >= other.changed) newest.set(entry.id, entry);
  }
  return [...newest.values()].sort((x, y) => y.changed - x.changed || (x.id < y.id ? -1 : 1));
}

/** The chart that lay on the desk, out of a record's body, or null. */
export function lastChartFrom(body: unknown): string | null {
  const { chartId } = fieldsOf(body);
  return typeof chartId === 'string' ? chartId : null;
}
