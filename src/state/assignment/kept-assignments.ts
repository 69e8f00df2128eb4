import type { Assignment } from '../../exchange/assignment/assignment';
import { contentId } from '../../exchange/assignment/content-id';
import { readAssignment } from '../../exchange/assignment/read-assignment';
import { decode, encode, mergeShelves } from '../records';
import { fieldsOf } from '../saved-fields';

/** An assignment that was accepted: on which chart, and since when. */
export interface KeptAssignment {
  /** What it asks for, as one word (`contentId`): the same by file and by link. The id that it came with stays in `assignment`. */
  readonly id: string;
  readonly assignment: Assignment;
  /** The student's own chart that it became. */
  readonly chart: string;
  /** Other charts that it became before: passes over them count too. */
  readonly also?: readonly string[];
  /** Milliseconds since 1970: when it was accepted, and when it was last changed. */
  readonly taken: number;
  readonly changed: number;
  /** Put away by the student; marked, so that no other tab brings it back. */
  readonly removed?: true;
}

/** What the device held: assignments, what could not be read (kept as it is), or a record of a newer page, which is left alone. */
export type KeptAssignments =
  | { readonly kind: 'good'; readonly list: readonly KeptAssignment[]; readonly unread: readonly unknown[] }
  | { readonly kind: 'newer' };

/** Under what key they are kept. */
export const ASSIGNMENTS_KEY = 'assignments';

/** Reads the record; null for none. One that is no record at all holds nothing. */
export function readKept(text: string | null): KeptAssignments {
  const decoded = text === null ? null : decode('assignments', text);
  if (decoded?.kind === 'newer') return { kind: 'newer' };
  const saved = decoded?.kind === 'good' ? fieldsOf(decoded.body).list : [];
  const unread: unknown[] = [];
  const list = (Array.isArray(saved) ? saved : []).flatMap((item: unknown): KeptAssignment[] => {
    const { assignment, chart, also, taken, changed, removed } = fieldsOf(item);
    const read = readAssignment(assignment);
    if (read.ok && typeof chart === 'string' && typeof taken === 'number' && typeof changed === 'number')
      return [
        withCharts(
          { id: contentId(read.value), assignment: read.value, chart, taken, changed, ...(removed === true && { removed }) },
          Array.isArray(also) ? also.filter((one) => typeof one === 'string') : [],
        ),
      ];
    unread.push(item);
    return [];
  });
  return { kind: 'good', list: together(list), unread };
}

/** The same assignment with passes over these charts counted too. */
export const withCharts = (kept: KeptAssignment, charts: readonly string[]): KeptAssignment => {
  const { also: before = [], ...rest } = kept;
  const also = [...new Set([...before, ...charts])].filter((chart) => chart !== kept.chart);
  return also.length === 0 ? rest : { ...rest, also };
};

/**
 * Each assignment once, the last changed first. One that was accepted twice (by file and by link, or in two tabs) is as it was changed last, since
 * it was first accepted, with every chart that it became; put away under one id of its own it stays while it is there under another.
 */
function together(list: readonly KeptAssignment[]): readonly KeptAssignment[] {
  const one = new Map<string, KeptAssignment>();
  const last = mergeShelves(
    list.map((kept) => ({ id: `${kept.id} ${kept.assignment.id}`, changed: kept.changed, kept })),
    [],
  ).map(({ kept }) => kept);
  // Those that are there before those put away, so that what is kept is one that is there.
  for (const kept of [...last.filter(({ removed }) => !removed), ...last.filter(({ removed }) => removed)])
    if (!one.has(kept.id)) one.set(kept.id, kept);
  for (const { id, chart, also = [], taken } of list) {
    const kept = one.get(id);
    if (kept) one.set(id, { ...withCharts(kept, [chart, ...also]), taken: Math.min(kept.taken, taken) });
  }
  return mergeShelves([...one.values()], []);
}

/** The record's text: ours and what another tab has kept since, of each the later. Null when it belongs to a newer page. */
export function writeKept(ours: readonly KeptAssignment[], held: string | null): string | null {
  const theirs = readKept(held);
  if (theirs.kind === 'newer') return null;
  const list = together([...theirs.list, ...ours]).map(({ id: _, ...kept }) => kept);
  return encode('assignments', { list: [...list, ...theirs.unread] });
}
