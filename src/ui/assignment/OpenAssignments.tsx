import { useContext, useId, useState } from 'react';
import type { AssignmentRoom } from '../../state/assignment/assignment-state';
import type { KeptAssignment } from '../../state/assignment/kept-assignments';
import { progressOf } from '../../state/assignment/progress';
import type { Journal } from '../../state/journal/journal';
import { ASSIGNMENT_WORDS } from '../../words/assignment';
import { useDesk } from '../app/desk-context';
import { goTo } from '../app/use-place';
import { beginDrill } from '../drills/begin-drill';
import { DrillsContext } from '../drills/drills-context';
import { useJournalState } from '../journal/use-journal';
import { AssignmentFacts } from './AssignmentFacts';
import { useAssignments } from './use-assignments';

/** The assignments that were accepted, each with how far it has come. */
export function OpenAssignments({ room, journal }: { readonly room: AssignmentRoom; readonly journal: Journal }) {
  const kept = useAssignments(room, (state) => state.kept);
  if (kept.length === 0) return null;
  return (
    <ul className="assignment-list no-print">
      {kept.map((one) => (
        <OneAssignment key={one.id} kept={one} room={room} journal={journal} />
      ))}
    </ul>
  );
}

interface One {
  readonly kept: KeptAssignment;
  readonly room: AssignmentRoom;
  readonly journal: Journal;
}

function OneAssignment({ kept, room, journal }: One) {
  const drills = useContext(DrillsContext);
  const unit = useDesk((state) => state.preferences.tempoUnit);
  const records = useJournalState(journal, (state) => state.records);
  const { assignment } = kept;
  const progress = progressOf(
    kept,
    records.map(({ record }) => record),
  );
  const facts = [
    ASSIGNMENT_WORDS.progress(progress.atGoal, assignment.passes),
    ASSIGNMENT_WORDS.sofar(progress.clean, progress.passes),
    ...(progress.reached === null ? [] : [ASSIGNMENT_WORDS.reached(progress.reached, unit)]),
    ...(assignment.drill ? [ASSIGNMENT_WORDS.drills(progress.drills)] : []),
  ];
  /** The chart as it was set, and the drill if one was named, begun with its number. */
  const open = async (): Promise<void> => {
    await room.open(kept);
    const { drill } = assignment;
    if (drill && drills) beginDrill(await drills(), drill.name, drill.seed);
    else goTo('practise');
  };
  return (
    <li className="assignment-one">
      <div className="assignment-what">
        <h3>
          {assignment.title}
          {progress.done && <b className="assignment-done">{ASSIGNMENT_WORDS.done}</b>}
        </h3>
        <AssignmentFacts assignment={assignment} tonic={null} />
        <p className="assignment-progress">{facts.join(' · ')}</p>
      </div>
      <div className="journal-row">
        <button type="button" className="key" aria-label={ASSIGNMENT_WORDS.openNamed(assignment.title)} onClick={() => void open()}>
          {ASSIGNMENT_WORDS.open}
        </button>
        <button
          type="button"
          className="plain"
          aria-label={ASSIGNMENT_WORDS.putAwayNamed(assignment.title)}
          onClick={() => room.putAway(kept)}
        >
          {ASSIGNMENT_WORDS.putAway}
        </button>
      </div>
      <HandBack kept={kept} room={room} />
    </li>
  );
}

function HandBack({ kept, room }: Pick<One, 'kept' | 'room'>) {
  const [who, setWho] = useState('');
  const [words, setWords] = useState('');
  const id = useId();
  return (
    <details>
      <summary>{ASSIGNMENT_WORDS.handBack}</summary>
      <form
        className="assignment-form"
        onSubmit={(event) => {
          event.preventDefault();
          room.saveResults(kept, { who, words });
        }}
      >
        <p className="caption">{ASSIGNMENT_WORDS.handBackHint}</p>
        <label htmlFor={`${id}who`}>{ASSIGNMENT_WORDS.who}</label>
        <input id={`${id}who`} className="line-field" maxLength={120} value={who} onChange={(event) => setWho(event.target.value)} />
        <label htmlFor={`${id}words`}>{ASSIGNMENT_WORDS.words}</label>
        <textarea
          id={`${id}words`}
          className="line-field"
          rows={2}
          maxLength={2000}
          value={words}
          onChange={(event) => setWords(event.target.value)}
        />
        <button type="submit" className="key" aria-label={ASSIGNMENT_WORDS.saveResultsNamed(kept.assignment.title)}>
          {ASSIGNMENT_WORDS.saveResults}
        </button>
      </form>
    </details>
  );
}
