import type { HandMove, NextMove, SetPlan } from '../../practice/set-planner';
import type { Journal } from '../../state/journal/journal';
import { JOURNAL_WORDS } from '../../words/journal';
import { printedChord } from '../../words/spoken';
import { goTo } from '../app/use-place';
import { useJournalState } from './use-journal';

/** Moves that are shown before the others are asked for: an evening's worth. */
const AT_ONCE = 6;

/** The moves of a set in the order of what they open; each is looped with one touch, and ticked off. */
export function Moves({ journal, plan }: { readonly journal: Journal; readonly plan: SetPlan }) {
  const known = useJournalState(journal, (state) => state.known);
  const first = plan.next.slice(0, Math.min(plan.most, AT_ONCE));
  const rest = plan.next.slice(first.length);
  const have = plan.moves.filter(({ key }) => known.has(key));
  const line = ({ move, unlocks, covered }: NextMove) => (
    <Move key={move.key} journal={journal} move={move} known={false} opens={JOURNAL_WORDS.unlocks(unlocks, covered)} />
  );
  return (
    <>
      <ol className="journal-moves">{first.map(line)}</ol>
      {rest.length > 0 && (
        <details>
          <summary>{JOURNAL_WORDS.theRest(rest.length)}</summary>
          <ol className="journal-moves" start={first.length + 1}>
            {rest.map(line)}
          </ol>
        </details>
      )}
      {have.length > 0 && (
        <details>
          <summary>{JOURNAL_WORDS.theKnown(have.length)}</summary>
          <ul className="journal-moves">
            {have.map((move) => (
              <Move key={move.key} journal={journal} move={move} known opens={null} />
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Move(props: { readonly journal: Journal; readonly move: HandMove; readonly known: boolean; readonly opens: string | null }) {
  const { journal, move, known, opens } = props;
  const [from, to] = [printedChord(move.fromChord), printedChord(move.toChord)];
  return (
    <li className="journal-move">
      <div>
        <b>{JOURNAL_WORDS.move(from, to)}</b>
        <p className="caption">
          {[JOURNAL_WORDS.moveFacts(move.count, move.charts.length, move.places.length), ...(opens === null ? [] : [opens])].join(' · ')}
        </p>
      </div>
      <button
        type="button"
        className="key journal-loop"
        aria-label={JOURNAL_WORDS.drillMove(from, to)}
        onClick={() => {
          journal.drillMove(move);
          goTo('practise');
        }}
      >
        {JOURNAL_WORDS.drill}
      </button>
      <label className="check">
        <input
          type="checkbox"
          checked={known}
          aria-label={JOURNAL_WORDS.haveMove(from, to)}
          onChange={(event) => journal.tick(move.key, event.target.checked)}
        />
        <span>{JOURNAL_WORDS.have}</span>
      </label>
    </li>
  );
}
