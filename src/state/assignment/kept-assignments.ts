import type { Assignment } from '../../exchange/assignment/assignment';
import { readAssignment } from '../../exchange/assignment/read-assignment';
import { decode, encode, mergeShelves } from '../records';
import { fieldsOf } from '../saved-fields';

/** An assignment that was accepted: on which chart, and since when. */
export interface KeptAssignment {
  /** Id of the assignment. */
  readonly id: string;
  readonly assignment: Assignment;
  /** The student's own chart that it became. */
  readonly chart: string;
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
    const { assignment, chart, taken, changed, removed } = fieldsOf(item);
    const read = readAssignment(assignment);
    if (read.ok && typeof chart === 'string' && typeof taken === 'number' && typeof changed === 'number')
      return [{ id: read.value.id, assignment: read.value, chart, taken, changed, ...(removed === true && { removed }) }];
    unread.push(item);
    return [];
  });
  return { kind: 'good', list: mergeShelves(list, []), unread };
}

/** The record's text: ours and what another tab has kept since, of each the later. Null when it belongs to a newer page. */
export function writeKept(ours: readonly KeptAssignment[], held: string | null): string | null {
  const theirs = readKept(held);
  if (theirs.kind === 'newer') return null;
  const list = mergeShelves(theirs.list, ours).map(({ id: _, ...kept }) => kept);
  return encode('assignments', { list: [...list, ...theirs.unread] });
}
