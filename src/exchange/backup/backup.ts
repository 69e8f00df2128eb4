/** Version of every backup written now; older ones are read for as long as the program lives, newer ones are refused. */
export const BACKUP_VERSION = 1;

/** A chart in a backup, with its settings. */
export interface BackupChart {
  readonly id: string;
  readonly title: string;
  /** When it was last changed, in milliseconds since 1970. */
  readonly changed: number;
  /** Exactly as typed. */
  readonly text: string;
  /** The last text without faults where that is another, else null. */
  readonly good: string | null;
  /** The saved record of its settings, untouched, or null. */
  readonly settings: string | null;
}

/** A set list in a backup. */
export interface BackupSet {
  readonly id: string;
  readonly name: string;
  /** A day as `2026-11-28`, or null. */
  readonly date: string | null;
  readonly charts: readonly string[];
  readonly changed: number;
}

/** An entry of the journal in a backup. */
export interface BackupEntry {
  readonly id: string;
  readonly at: number;
  readonly text: string;
}

/** Everything that is kept on a device, in one value. Lists are in the order of their ids, so that equal contents give equal bytes. */
export interface Backup {
  /** When it was made, as `2026-11-25T18:00:00.000Z`. */
  readonly made: string;
  readonly charts: readonly BackupChart[];
  readonly sets: readonly BackupSet[];
  readonly journal: readonly BackupEntry[];
  /** Every other saved record by its key, untouched: preferences, habits, settings of the demo book. */
  readonly records: Readonly<Record<string, string>>;
}

/** The text of a backup file: JSON that a person can read. `readBackup(writeBackup(backup))` is the same backup. */
export function writeBackup(backup: Backup): string {
  const { made, charts, sets, journal, records } = backup;
  const byId = <Item extends { readonly id: string }>(items: readonly Item[]): readonly Item[] =>
    [...items].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  const keys = Object.keys(records).sort();
  return `${JSON.stringify(
    {
      contratiempo: 'backup',
      version: BACKUP_VERSION,
      made,
      charts: byId(charts).map(({ id, title, changed, text, good, settings }) => ({ id, title, changed, text, good, settings })),
      sets: byId(sets).map(({ id, name, date, charts: ids, changed }) => ({ id, name, date, charts: ids, changed })),
      journal: byId(journal).map(({ id, at, text }) => ({ id, at, text })),
      records: Object.fromEntries(keys.map((key) => [key, records[key]])),
    },
    null,
    1,
  )}\n`;
}
