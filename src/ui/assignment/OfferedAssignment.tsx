import type { AssignmentRoom, OfferedAssignment as Offer } from '../../state/assignment/assignment-state';
import { ASSIGNMENT_WORDS } from '../../words/assignment';
import { AssignmentFacts } from './AssignmentFacts';
import { useAssignments } from './use-assignments';

/** An assignment out of a file, before anything is taken over. */
export function OfferedAssignment({ room, offer }: { readonly room: AssignmentRoom; readonly offer: Offer }) {
  const newer = useAssignments(room, (state) => state.newer);
  const { assignment, key, faults, known } = offer;
  return (
    <div className="assignment-offer">
      <h3>{ASSIGNMENT_WORDS.offer(assignment.title)}</h3>
      <AssignmentFacts assignment={assignment} tonic={key} />
      {known && <p>{ASSIGNMENT_WORDS.offerKnown}</p>}
      {faults > 0 && <p className="wrong">{ASSIGNMENT_WORDS.offerFaults(faults)}</p>}
      <div className="journal-row">
        {!newer && (
          <button type="button" className="key" onClick={() => void room.take()}>
            {ASSIGNMENT_WORDS.accept}
          </button>
        )}
        <button type="button" className="plain" onClick={room.leave}>
          {ASSIGNMENT_WORDS.leave}
        </button>
      </div>
    </div>
  );
}
