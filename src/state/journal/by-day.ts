import { dayOf } from '../../practice/due-dates';
import type { StepPicture } from '../../practice/finding';
import type { CheckRecord, DrillRecord, NoteRecord, PassRecord } from '../../practice/journal';
import type { Zone } from './due-items';
import type { KeptRecord } from './journal-state';

/** Passes of one loop at one day, together. */
export interface LoopOfDay {
  readonly key: string;
  readonly chart: string;
  readonly title: string;
  readonly fromBar: number;
  readonly toBar: number;
  readonly passes: number;
  readonly clean: number;
  /** Lowest and highest tempo, half notes a minute. */
  readonly slowest: number;
  readonly fastest: number;
  /** What was said, the most frequent first, as kinds of findings; and the first try of the day. */
  readonly said: readonly string[];
  readonly check: CheckRecord['result'] | null;
  readonly ids: readonly string[];
}

/** A drill or a note, with the id of its entry. */
export interface OtherOfDay {
  readonly id: string;
  readonly record: DrillRecord | NoteRecord;
}

/** One day of the journal. */
export interface JournalDay {
  readonly day: number;
  /** A moment of that day, for its date. */
  readonly at: number;
  readonly loops: readonly LoopOfDay[];
  readonly others: readonly OtherOfDay[];
}

/** The days of the journal, the last first; within a day in the order in which things were last played. */
export function byDay(records: readonly KeptRecord[], zone: Zone): readonly JournalDay[] {
  const days = new Map<number, KeptRecord[]>();
  for (const kept of records) {
    const day = dayOf(kept.record.at, zone(kept.record.at));
    days.set(day, [...(days.get(day) ?? []), kept]);
  }
  return [...days].sort(([a], [b]) => b - a).map(([day, here]) => oneDay(day, here));
}

function oneDay(day: number, records: readonly KeptRecord[]): JournalDay {
  const loops = new Map<string, { id: string; record: PassRecord }[]>();
  const others: OtherOfDay[] = [];
  for (const { id, record } of records) {
    if (record.kind === 'note' || record.kind === 'drill') others.unshift({ id, record });
    if (record.kind !== 'pass') continue;
    const key = `${record.chart} ${record.fromBar + 1}-${record.toBar}`;
    const held = loops.get(key) ?? [];
    loops.delete(key);
    loops.set(key, [...held, { id, record }]);
  }
  const checks = records.flatMap(({ id, record }) => (record.kind === 'check' ? [{ id, record }] : []));
  return {
    day,
    at: records[0]?.record.at ?? 0,
    others,
    loops: [...loops].reverse().map(([key, passes]) =>
      oneLoop(
        key,
        passes,
        checks.find(({ record }) => record.item === key),
      ),
    ),
  };
}

function oneLoop(
  key: string,
  passes: readonly { readonly id: string; readonly record: PassRecord }[],
  check: { readonly id: string; readonly record: CheckRecord } | undefined,
): LoopOfDay {
  const all = passes.map(({ record }) => record);
  const last = all.at(-1);
  const tempi = all.map(({ tempo }) => tempo);
  const counts = new Map<string, number>();
  for (const kind of all.flatMap(({ findings }) => findings)) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return {
    key,
    chart: last?.chart ?? '',
    title: last?.title ?? '',
    fromBar: last?.fromBar ?? 0,
    toBar: last?.toBar ?? 0,
    passes: all.length,
    clean: all.filter(({ clean }) => clean).length,
    slowest: Math.min(...tempi),
    fastest: Math.max(...tempi),
    said: [...counts].sort((a, b) => b[1] - a[1]).map(([kind]) => kind),
    check: check?.record.result ?? null,
    ids: [...passes.map(({ id }) => id), ...(check ? [check.id] : [])],
  };
}

/** Passes that make the picture of timing: enough to see a habit, few enough to be today's player. Design value. */
const PICTURED = 20;

/** Where the strokes of the last judged passes fell, step by step: middle and spread of the passes' means. Null without any. */
export function timingOf(records: readonly KeptRecord[]): { readonly steps: readonly StepPicture[]; readonly passes: number } | null {
  const judged = records.flatMap(({ record }) => (record.kind === 'pass' && record.stepsMs.length > 0 ? [record.stepsMs] : []));
  const length = judged.at(-1)?.length ?? 0;
  const last = judged.filter((steps) => steps.length === length).slice(-PICTURED);
  if (last.length === 0) return null;
  const steps = Array.from({ length }, (_, cycleStep): StepPicture => {
    const here = last.flatMap((means) => means[cycleStep] ?? []);
    const meanMs = here.length === 0 ? null : here.reduce((sum, ms) => sum + ms, 0) / here.length;
    const spreadMs =
      meanMs === null || here.length < 2 ? null : Math.sqrt(here.reduce((sum, ms) => sum + (ms - meanMs) ** 2, 0) / here.length);
    return { cycleStep, asked: here.length, played: here.length, missed: 0, extra: 0, meanMs, spreadMs };
  });
  return { steps, passes: last.length };
}

/** One chart with the highest tempo of a clean pass on it, the last practised first. */
export interface TempoReached {
  readonly chart: string;
  readonly title: string;
  readonly tempo: number | null;
  readonly passes: number;
  readonly clean: number;
}

/** What was reached on every chart. */
export function tempiReached(records: readonly KeptRecord[]): readonly TempoReached[] {
  const charts = new Map<string, TempoReached>();
  for (const { record } of records) {
    if (record.kind !== 'pass') continue;
    const held = charts.get(record.chart);
    charts.delete(record.chart);
    const tempo = record.clean ? Math.max(held?.tempo ?? 0, record.tempo) : (held?.tempo ?? null);
    const clean = (held?.clean ?? 0) + (record.clean ? 1 : 0);
    charts.set(record.chart, { chart: record.chart, title: record.title, tempo, passes: (held?.passes ?? 0) + 1, clean });
  }
  return [...charts.values()].reverse();
}
