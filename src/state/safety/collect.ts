import type { Backup, BackupChart } from '../../exchange/backup/backup';
import { isOwnRecord } from '../../exchange/backup/read-backup';
import { titleOf } from '../chart-text';
import type { ShelfEntry } from '../desk-state';
import { setsFrom } from '../library/set-list';
import type { JournalEntry } from '../ports';
import { chartFrom, decode } from '../records';

/** Everything kept on a device as one backup. Charts that were taken away are not in it; those that cannot be read are left where they lie. */
export function collected(
  records: ReadonlyMap<string, string>,
  shelf: readonly ShelfEntry[],
  journal: readonly JournalEntry[],
  made: string,
): Backup {
  const entries = new Map(shelf.map((entry) => [entry.id, entry]));
  const charts = [...records].flatMap(([key, record]): BackupChart[] => {
    const id = /^chart\/(.+)$/.exec(key)?.[1];
    const entry = id === undefined ? undefined : entries.get(id);
    const decoded = decode('chart', record);
    const chart = decoded.kind === 'good' ? chartFrom(decoded.body) : null;
    if (id === undefined || id === 'quick' || entry?.removed || !chart) return [];
    return [{ id, title: titleOf(chart.text), changed: entry?.changed ?? 0, ...chart, settings: records.get(`settings/${id}`) ?? null }];
  });
  const sets = decode('sets', records.get('sets') ?? '');
  return {
    made,
    charts: charts.sort(byId),
    sets: (sets.kind === 'good' ? setsFrom(sets.body) : [])
      .filter(({ removed }) => removed !== true)
      .map(({ id, name, date, charts: ids, changed }) => ({ id, name, date, charts: ids, changed }))
      .sort(byId),
    journal: [...journal].sort(byId),
    records: Object.fromEntries([...records].filter(([key]) => !isOwnRecord(key)).sort(([a], [b]) => (a < b ? -1 : 1))),
  };
}

const byId = (a: { readonly id: string }, b: { readonly id: string }): number => (a.id < b.id ? -1 : 1);
