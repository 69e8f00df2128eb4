import { useCallback, useEffect, useRef } from 'react';
import type { AssignmentRoom } from '../../state/assignment/assignment-state';
import type { Journal } from '../../state/journal/journal';
import { ASSIGNMENT_WORDS } from '../../words/assignment';
import { useRoom } from '../app/use-room';
import { FilesButton } from '../files/FilesButton';
import { useFilesDrop } from '../files/use-files-drop';
import { MakeAssignment } from './MakeAssignment';
import { OfferedAssignment } from './OfferedAssignment';
import { OpenAssignments } from './OpenAssignments';
import { Refused } from './Refused';
import { ResultsTable } from './ResultsTable';
import { useAssignments } from './use-assignments';
import './assignment.css';

/** Assignments out and in by file or link, results by file. */
export function TeacherAndStudent({ journal }: { readonly journal: Journal }) {
  const room = useRoom(useCallback(() => journal.assignments(), [journal]));
  return room && <Section room={room} journal={journal} />;
}

function Section({ room, journal }: { readonly room: AssignmentRoom; readonly journal: Journal }) {
  const { offer, newer, putAway, refused, refusedLink, come } = useAssignments(room, (state) => state);
  const section = useRef<HTMLElement>(null);
  // What came by link, or was dropped in another place, is brought into sight.
  useEffect(() => {
    if (!come) return;
    const said = offer || refusedLink || refused.length > 0;
    section.current?.querySelector(said ? '.assignment-said' : '.assignment-results')?.scrollIntoView({ block: 'nearest' });
    room.seen();
  }, [come, offer, refused, refusedLink, room]);
  const { over, handlers } = useFilesDrop(room.give);
  return (
    <section ref={section} className="assignment" aria-labelledby="teacher-and-student" {...handlers}>
      <div className="assignment-head no-print">
        <div>
          <h2 id="teacher-and-student">{ASSIGNMENT_WORDS.title}</h2>
          <p className="caption">{over ? ASSIGNMENT_WORDS.dropHere : ASSIGNMENT_WORDS.hint}</p>
        </div>
        <FilesButton name={ASSIGNMENT_WORDS.openFile} accept=".json,application/json" onGive={room.give} />
      </div>
      <div className="assignment-said no-print" aria-live="polite">
        {newer && <p className="notice">{ASSIGNMENT_WORDS.newer}</p>}
        <Refused room={room} />
        {offer && <OfferedAssignment room={room} offer={offer} />}
        {putAway && (
          <p className="notice">
            {ASSIGNMENT_WORDS.wasPutAway(putAway.assignment.title)}
            <button type="button" className="plain" onClick={room.bringBack}>
              {ASSIGNMENT_WORDS.undo}
            </button>
          </p>
        )}
      </div>
      <OpenAssignments room={room} journal={journal} />
      <ResultsTable room={room} />
      <MakeAssignment room={room} />
    </section>
  );
}
