import { useCallback, useRef, useState } from 'react';
import type { AssignmentRoom } from '../../state/assignment/assignment-state';
import type { Journal } from '../../state/journal/journal';
import { ASSIGNMENT_WORDS } from '../../words/assignment';
import { useRoom } from '../app/use-room';
import { readFiles } from '../chart/FilesDrop';
import { MakeAssignment } from './MakeAssignment';
import { OfferedAssignment } from './OfferedAssignment';
import { OpenAssignments } from './OpenAssignments';
import { ResultsTable } from './ResultsTable';
import { useAssignments } from './use-assignments';
import './assignment.css';

/** Faults of one file that are shown; the others are counted. */
const SHOWN = 3;

/** Assignments out and in, results out and in: everything by file. */
export function TeacherAndStudent({ journal }: { readonly journal: Journal }) {
  const room = useRoom(useCallback(() => journal.assignments(), [journal]));
  return room && <Section room={room} journal={journal} />;
}

function Section({ room, journal }: { readonly room: AssignmentRoom; readonly journal: Journal }) {
  const { offer, newer, putAway } = useAssignments(room, (state) => state);
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

function Refused({ room }: { readonly room: AssignmentRoom }) {
  const refused = useAssignments(room, (state) => state.refused);
  return refused.map(({ id, name, faults }) => (
    <div key={id} className="wrong">
      {faults.slice(0, SHOWN).map((fault) => (
        <p key={fault.code === 'field' ? fault.path : fault.code}>{ASSIGNMENT_WORDS.fault(name, fault)}</p>
      ))}
      {faults.length > SHOWN && <p>{ASSIGNMENT_WORDS.moreFaults(faults.length - SHOWN)}</p>}
    </div>
  ));
}
