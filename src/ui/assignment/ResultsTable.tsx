import type { AssignmentRoom } from '../../state/assignment/assignment-state';
import { type ResultsRow, rowOf } from '../../state/assignment/progress';
import { ASSIGNMENT_WORDS } from '../../words/assignment';
import { JOURNAL_WORDS } from '../../words/journal';
import { useDesk } from '../app/desk-context';
import { usePrintedAlone } from '../sheet/use-printed-alone';
import { useAssignments } from './use-assignments';

/** Results that came back, a table for each assignment; printed alone. */
export function ResultsTable({ room }: { readonly room: AssignmentRoom }) {
  const results = useAssignments(room, (state) => state.results);
  const [printing, print] = usePrintedAlone();
  if (results.length === 0) return null;
  const titles = new Map(results.map(({ assignment, title }) => [assignment, title]));
  return (
    <div className={printing ? 'assignment-results printed-alone' : 'assignment-results'}>
      <h3>{ASSIGNMENT_WORDS.results}</h3>
      {[...titles].map(([id, title]) => (
        <table key={id}>
          <caption>{title}</caption>
          <thead>
            <tr>
              {Object.entries(ASSIGNMENT_WORDS.columns).map(([name, heading]) => (
                <th key={name} scope="col">
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {results
              .filter(({ assignment }) => assignment === id)
              .map((one) => (
                <Row key={`${one.made} ${one.who}`} row={rowOf(one)} />
              ))}
          </tbody>
        </table>
      ))}
      <div className="journal-row no-print">
        <button type="button" className="key" onClick={print}>
          {ASSIGNMENT_WORDS.print}
        </button>
        <button type="button" className="plain" onClick={room.clearResults}>
          {ASSIGNMENT_WORDS.clear}
        </button>
      </div>
    </div>
  );
}

function Row({ row }: { readonly row: ResultsRow }) {
  const unit = useDesk((state) => state.preferences.tempoUnit);
  const { results, said, shareRight, rated, drills } = row;
  const { columns } = ASSIGNMENT_WORDS;
  const most = said.map(({ kind, times }) => ASSIGNMENT_WORDS.saidTimes(saidOf(kind), times)).join(' · ');
  return (
    <tr>
      <th scope="row">{results.who || ASSIGNMENT_WORDS.nameless}</th>
      <td data-column={columns.passes}>
        {row.passes}
        {rated > 0 && <span className="caption"> {ASSIGNMENT_WORDS.rated(rated)}</span>}
        {drills > 0 && <span className="caption"> {ASSIGNMENT_WORDS.drills(drills)}</span>}
      </td>
      <td data-column={columns.clean}>
        {ASSIGNMENT_WORDS.share(row.shareClean)}
        <span className="caption"> {ASSIGNMENT_WORDS.progress(row.atGoal, results.wanted)}</span>
        {shareRight !== null && <span className="caption"> {ASSIGNMENT_WORDS.strokes(shareRight)}</span>}
      </td>
      <td data-column={columns.reached}>{ASSIGNMENT_WORDS.reachedOf(row.reached, results.goalTempo, unit)}</td>
      <td data-column={columns.said}>{most || ASSIGNMENT_WORDS.nothingSaid}</td>
      <td data-column={columns.words}>{results.words}</td>
    </tr>
  );
}

function saidOf(kind: string): string {
  const words: Readonly<Record<string, string>> = JOURNAL_WORDS.said;
  return Object.hasOwn(words, kind) ? (words[kind] ?? kind) : kind;
}
