import { PRACTICE } from './practice-limits';

/*
 * What is due again, and when: the first time after one day, then after longer as long as the first try of the day is clean, sooner
 * when it is not. While the date of a gig is set nothing is due: the set is practised as a whole.
 *
 *   const item = firstPractised('coro, level 3', dayOf(now, offset));
 *   dueOn(items, today, gigDay)          // the items due, the longest overdue first
 *   checked(item, today, 'clean')        // after the first try of that day, the retention check
 *
 * Days are whole numbers since 1970 in the player's own time zone.
 */

/** How the first try of a day went. */
export type CheckResult = 'clean' | 'shaky' | 'lost';

/** Something that was practised and comes back. */
export interface DueItem {
  readonly id: string;
  /** Day on which it was first practised. */
  readonly since: number;
  readonly lastDay: number;
  readonly intervalDays: number;
  readonly due: number;
  /** Every check, oldest first. */
  readonly checks: readonly { readonly day: number; readonly result: CheckResult }[];
}

/** The day of a moment; `offsetMinutes` is that of the time zone, east positive. */
export const dayOf = (millisSince1970: number, offsetMinutes: number): number =>
  Math.floor((millisSince1970 + offsetMinutes * 60_000) / 86_400_000);

/** An item practised for the first time: due the next day. */
export function firstPractised(id: string, day: number): DueItem {
  const intervalDays = PRACTICE.firstInterval.value;
  return { id, since: day, lastDay: day, intervalDays, due: day + intervalDays, checks: [] };
}

/** The item after the first try of `day`. A second try on a day that is in the item already changes nothing. */
export function checked(item: DueItem, day: number, result: CheckResult): DueItem {
  if (day <= item.lastDay) return item;
  const intervalDays = nextInterval(item.intervalDays, result);
  return { ...item, lastDay: day, intervalDays, due: day + intervalDays, checks: [...item.checks, { day, result }] };
}

/** Days until the next check. Example: 4 days and clean gives 8, shaky 4, lost 2. */
export function nextInterval(days: number, result: CheckResult): number {
  const factor = result === 'clean' ? PRACTICE.growth.value : result === 'lost' ? PRACTICE.shrink.value : 1;
  return Math.max(PRACTICE.firstInterval.value, Math.min(PRACTICE.longestInterval.value, Math.floor(days * factor)));
}

/** What is due on a day, the longest overdue first, then by id. Nothing while a gig lies ahead (its own day included). */
export function dueOn(items: readonly DueItem[], day: number, gigDay: number | null): DueItem[] {
  if (gigDay !== null && day <= gigDay) return [];
  return items.filter(({ due }) => due <= day).sort((a, b) => a.due - b.due || (a.id < b.id ? -1 : 1));
}
