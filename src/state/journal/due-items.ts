import { type CheckResult, checked, type DueItem, dayOf, dueOn, firstPractised } from '../../practice/due-dates';
import type { CheckRecord, JournalRecord, PassRecord } from '../../practice/journal';

/** Minutes that the player's clock is ahead of UTC at a moment. */
export type Zone = (at: number) => number;

/** Something practised that comes back, and where it is. */
export interface Due {
  readonly item: DueItem;
  readonly chart: string;
  readonly title: string;
  readonly fromBar: number;
  readonly toBar: number;
  /** How the last pass of it went, and at what tempo. */
  readonly last: PassRecord;
}

/** From this share of strokes right a first try that was not clean is shaky, below it lost. Design value. */
const SHAKY_FROM = 0.8;

/** What is practised is these bars of this chart. Chords played from the quick line are nothing that could come back. */
export const itemOf = ({ chart, fromBar, toBar }: PassRecord): string | null =>
  chart === 'quick' ? null : `${chart} ${fromBar + 1}-${toBar}`;

/** How the first try of a day went. */
export const resultOf = ({ clean, shareRight, findings }: PassRecord): CheckResult =>
  clean ? 'clean' : (shareRight ?? 0) >= SHAKY_FROM || findings.includes('nearly') ? 'shaky' : 'lost';

/** Everything that was practised, with its days, out of the records (oldest first). */
export function dueItems(records: readonly JournalRecord[], zone: Zone): readonly Due[] {
  const items = new Map<string, Due>();
  for (const record of records) {
    const day = dayOf(record.at, zone(record.at));
    if (record.kind === 'pass') {
      const id = itemOf(record);
      if (id === null) continue;
      const held = items.get(id);
      const { chart, title, fromBar, toBar } = record;
      items.set(id, { item: held?.item ?? firstPractised(id, day), chart, title, fromBar, toBar, last: record });
    } else if (record.kind === 'check') {
      const held = items.get(record.item);
      if (held) items.set(record.item, { ...held, item: checked(held.item, day, record.result) });
    }
  }
  return [...items.values()];
}

/** The check that a pass is: the first try of its day on something practised on a day before; else null. */
export function checkOf(records: readonly JournalRecord[], pass: PassRecord, zone: Zone): CheckRecord | null {
  const id = itemOf(pass);
  if (id === null) return null;
  const today = dayOf(pass.at, zone(pass.at));
  const before = records.filter((record): record is PassRecord => record.kind === 'pass' && itemOf(record) === id);
  const lastDay = Math.max(...before.map(({ at }) => dayOf(at, zone(at))));
  if (before.length === 0 || lastDay >= today) return null;
  const { at, chart, title } = pass;
  return { kind: 'check', at, chart, title, item: id, result: resultOf(pass), daysSince: today - lastDay };
}

/** The day, as a whole number since 1970, of a date written as `2026-11-28`. */
export const dayOfDate = (date: string): number => Math.round(Date.parse(`${date}T00:00:00Z`) / 86_400_000);

/** What is due on a day, the longest overdue first; nothing while the day of a gig lies ahead. */
export function dueNow(items: readonly Due[], today: number, gigDay: number | null): readonly Due[] {
  const due = dueOn(
    items.map(({ item }) => item),
    today,
    gigDay,
  );
  return due.flatMap(({ id }) => items.find(({ item }) => item.id === id) ?? []);
}
