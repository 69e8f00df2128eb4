import { fieldsOf } from '../saved-fields';

/** Charts for one evening, in the order in which they are played. */
export interface SetList {
  readonly id: string;
  readonly name: string;
  /** The day it is for as `2026-11-28`, or null. */
  readonly date: string | null;
  /** Ids of charts, one's own or of the demo book; a chart may stand in it twice. */
  readonly charts: readonly string[];
  /** When it was last changed, in milliseconds since 1970. */
  readonly changed: number;
  /** Taken away, so that no other tab brings it back. */
  readonly removed?: true;
}

/** Longest name of a set list, in characters. */
export const LONGEST_NAME = 120;
/** The most charts of one set list. */
export const MOST_CHARTS = 200;

/** Set lists out of a record's body: the good ones, each field checked. */
export function setsFrom(body: unknown): readonly SetList[] {
  const { lists } = fieldsOf(body);
  return Array.isArray(lists) ? lists.flatMap((list) => setFrom(list) ?? []) : [];
}

/** One set list out of anything that was parsed, or null. */
export function setFrom(value: unknown): SetList | null {
  const { id, name, date, charts, changed, removed } = fieldsOf(value);
  if (typeof id !== 'string' || typeof name !== 'string' || typeof changed !== 'number') return null;
  return {
    id,
    name: name.slice(0, LONGEST_NAME),
    date: isDay(date) ? date : null,
    charts: Array.isArray(charts) ? charts.filter((chart) => typeof chart === 'string').slice(0, MOST_CHARTS) : [],
    changed: Number.isFinite(changed) ? changed : 0,
    ...(removed === true && { removed }),
  };
}

/** True for a day of the calendar written as `2026-11-28`. */
export function isDay(value: unknown): value is string {
  if (typeof value !== 'string' || !/^\d{4}-\d{2}-\d{2}$/.test(value)) return false;
  const day = new Date(`${value}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(value);
}

/** `charts` with the one at `from` moved to `to`, both places in the list. */
export function movedChart(charts: readonly string[], from: number, to: number): readonly string[] {
  const chart = charts[from];
  if (chart === undefined || to < 0 || to >= charts.length) return charts;
  const rest = charts.filter((_, place) => place !== from);
  return [...rest.slice(0, to), chart, ...rest.slice(to)];
}
