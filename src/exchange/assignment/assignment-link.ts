import { failed, type Result } from '../../vocabulary';
import { ASSIGNMENT_MARK, type LinkFault } from '../link/lesson';
import { pack, unpack } from '../link/packed';
import { ASSIGNMENT_VERSION, type Assignment, writeAssignment } from './assignment';
import { type AssignmentFault, readAssignmentFile } from './read-assignment';

/** An assignment as the part of an address behind the page's own: `#t=1.` and its file, packed. What does not fit is a fault that says by how much. */
export const makeAssignmentLink = (assignment: Assignment): Result<string, LinkFault> =>
  pack(ASSIGNMENT_MARK, ASSIGNMENT_VERSION, JSON.stringify(JSON.parse(writeAssignment(assignment))));

/** Reads such a part of an address: the faults of a link, or those of the file in it. Results do not come by link. */
export function readAssignmentLink(hash: string): Result<Assignment, LinkFault | AssignmentFault> {
  const text = unpack(ASSIGNMENT_MARK, ASSIGNMENT_VERSION, hash);
  if (!text.ok) return text;
  const file = readAssignmentFile(text.value);
  if (!file.ok) return file;
  return file.value.kind === 'assignment' ? { ok: true, value: file.value.assignment } : failed({ code: 'no lesson', found: 0 });
}
