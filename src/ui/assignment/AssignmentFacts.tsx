import type { KeptAssignment } from '../../state/assignment/kept-assignments';
import { ASSIGNMENT_WORDS } from '../../words/assignment';
import { useDesk } from '../app/desk-context';
import { drillName } from './drill-name';

/** What an assignment asks for, and its teacher's words; everything that came with the file is plain text. */
export function AssignmentFacts({
  assignment,
  tonic,
}: {
  readonly assignment: KeptAssignment['assignment'];
  readonly tonic: string | null;
}) {
  const unit = useDesk((state) => state.preferences.tempoUnit);
  const { loop, direction, kind, level, passes, goalTempo, drill, due, note } = assignment;
  const where = loop ? ASSIGNMENT_WORDS.bars(loop.fromBar, loop.toBar) : ASSIGNMENT_WORDS.whole;
  const today = new Date().toLocaleDateString('sv');
  return (
    <>
      <p className="assignment-asks">
        {ASSIGNMENT_WORDS.asks(passes, goalTempo, unit)}
        {due !== null && <span>, {due < today ? ASSIGNMENT_WORDS.over(due) : ASSIGNMENT_WORDS.until(due)}</span>}
      </p>
      <p className="caption">{ASSIGNMENT_WORDS.facts(where, tonic, direction, kind, level)}</p>
      {drill && <p className="caption">{ASSIGNMENT_WORDS.asksDrill(drillName(drill.name), drill.seed)}</p>}
      {note !== '' && <blockquote className="assignment-note">{note}</blockquote>}
    </>
  );
}
