import type { AssignmentRoom } from '../../state/assignment/assignment-state';
import { ASSIGNMENT_WORDS } from '../../words/assignment';
import { LINK_WORDS } from '../../words/link';
import { useAssignments } from './use-assignments';

/** Faults of one file that are shown; the others are counted. */
const SHOWN = 3;

/** Why files, or the link that the page was opened with, were not taken. */
export function Refused({ room }: { readonly room: AssignmentRoom }) {
  const { refused, refusedLink } = useAssignments(room, (state) => state);
  if (refusedLink)
    return (
      <p className="wrong">
        {ASSIGNMENT_WORDS.linkRefused} {LINK_WORDS.fault(refusedLink.code, refusedLink.found)}
      </p>
    );
  return refused.map(({ id, name, faults }) => (
    <div key={id} className="wrong">
      {faults.slice(0, SHOWN).map((fault) => (
        <p key={fault.code === 'field' ? fault.path : fault.code}>{ASSIGNMENT_WORDS.fault(name, fault)}</p>
      ))}
      {faults.length > SHOWN && <p>{ASSIGNMENT_WORDS.moreFaults(faults.length - SHOWN)}</p>}
    </div>
  ));
}
