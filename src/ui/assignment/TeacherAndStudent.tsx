import { useCallback, useEffect, useRef, useState } from 'react';
import type { AssignmentRoom } from '../../state/assignment/assignment-state';
import type { Journal } from '../../state/journal/journal';
import { ASSIGNMENT_WORDS } from '../../words/assignment';
import { useRoom } from '../app/use-room';
import { readFiles } from '../chart/FilesDrop';
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
  const { offer, newer, putAway, refusedLink } = useAssignments(room, (state) => state);
  const said = useRef<HTMLDivElement>(null);
  // What came by link came with the page: it is brought into sight.
  useEffect(() => {
    if (offer || refusedLink) said.current?.scrollIntoView({ block: 'nearest' });
  }, [offer, refusedLink]);
  const input = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  const give = (files: readonly File[]): void => void readFiles(files).then(room.give);
  return (
    <section
      className="assignment"
      aria-labelledby="teacher-and-student"
      onDragOver={(event) => {
        if (!event.dataTransfer.types.includes('Files')) return;
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setOver(false);
      }}
      onDrop={(event) => {
        setOver(false);
        if (!event.dataTransfer.types.includes('Files')) return;
        event.preventDefault();
        give([...event.dataTransfer.files]);
      }}
    >
      <div className="assignment-head no-print">
        <div>
          <h2 id="teacher-and-student">{ASSIGNMENT_WORDS.title}</h2>
          <p className="caption">{over ? ASSIGNMENT_WORDS.dropHere : ASSIGNMENT_WORDS.hint}</p>
        </div>
        <button type="button" className="key" onClick={() => input.current?.click()}>
          {ASSIGNMENT_WORDS.openFile}
        </button>
        <input
          ref={input}
          type="file"
          multiple
          hidden
          accept=".json,application/json"
          aria-label={ASSIGNMENT_WORDS.openFile}
          onChange={(event) => {
            const files = [...(event.target.files ?? [])];
            // Choosing the same file again is a change too.
            event.target.value = '';
            give(files);
          }}
        />
      </div>
      <div ref={said} className="assignment-said no-print" aria-live="polite">
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
