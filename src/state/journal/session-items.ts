import { dayOf } from '../../practice/due-dates';
import { type PracticePlan, planSession } from '../../practice/practice-plan';
import type { Due, Zone } from './due-items';
import type { JournalState, KeptRecord, SessionItem } from './journal-state';

/** The most blocks of one session: two rounds of three with a break between. */
const MOST_BLOCKS = 6;
/** Times that a block goes on and off: three minutes with rests. */
const ROUNDS = 3;

/** A session before it begins. */
export interface LaidOut {
  readonly plan: PracticePlan;
  /** What is played, in its order. */
  readonly blocks: readonly SessionItem[];
  /** What is too close to something new of today. */
  readonly left: readonly SessionItem[];
}

/** The order of a session about these things, with or without rests, and what it leaves for another day. */
export function laidOut(items: readonly SessionItem[], rests: boolean): LaidOut {
  const twins = items.map(({ id, chart, level, isNew }) => ({ id, family: chart, level: level ?? 0, isNew }));
  const plan = planSession(twins, { rests, roundsPerBlock: ROUNDS });
  const order = new Set(plan.parts.flatMap((part) => (part.kind === 'play' ? [part.item] : [])));
  const named = (ids: Iterable<string>): SessionItem[] => [...ids].flatMap((id) => items.find((item) => item.id === id) ?? []);
  return { plan, blocks: named(order), left: named(plan.tomorrow) };
}

/** What a session is about: the moves that a set needs next, or else what is due, or else what was played last. */
export function sessionItems(
  { study, records }: Pick<JournalState, 'study' | 'records'>,
  due: readonly Due[],
  titleOf: (chart: string) => string | null,
  today: number,
  zone: Zone,
): readonly SessionItem[] {
  const moves = (study?.plan.next ?? []).slice(0, study?.plan.most).map(
    ({ move: { key, first } }): SessionItem => ({
      id: key,
      chart: first.chart,
      title: titleOf(first.chart) ?? first.chart,
      fromBar: Math.max(0, first.bar - 1),
      toBar: first.bar + 1,
      isNew: true,
      level: null,
    }),
  );
  const dues = due.map(
    ({ item, chart, title, fromBar, toBar, last }): SessionItem => ({
      id: item.id,
      chart,
      title,
      fromBar,
      toBar,
      isNew: item.since === today,
      level: last.level,
    }),
  );
  const found = [moves, dues, lastPlayed(records, today, zone)].find((items) => items.length > 0) ?? [];
  return found.slice(0, MOST_BLOCKS);
}

/** Loops that were played, the last first, each level of one as a thing of its own. */
function lastPlayed(records: readonly KeptRecord[], today: number, zone: Zone): readonly SessionItem[] {
  const items = new Map<string, SessionItem>();
  for (const { record } of records) {
    if (record.kind !== 'pass' || record.chart === 'quick') continue;
    const { chart, title, fromBar, toBar, level, at } = record;
    const id = `${chart} ${fromBar + 1}-${toBar} ${level}`;
    const isNew = items.get(id)?.isNew ?? dayOf(at, zone(at)) === today;
    items.delete(id);
    items.set(id, { id, chart, title, fromBar, toBar, isNew, level });
  }
  return [...items.values()].reverse();
}
