import type { Due } from '../../state/journal/due-items';
import type { Journal } from '../../state/journal/journal';
import type { SetList } from '../../state/library/set-list';
import { JOURNAL_WORDS } from '../../words/journal';
import { goTo } from '../app/use-place';
import { momentOfSet } from './use-journal';

/** What comes back today, or why nothing does. */
export function DueAgain(props: {
  readonly journal: Journal;
  readonly due: readonly Due[];
  readonly gig: SetList | null;
  readonly today: number;
}) {
  const { journal, due, gig, today } = props;
  const at = gig && momentOfSet(gig);
  return (
    <section aria-labelledby="due-again">
      <h2 id="due-again">{JOURNAL_WORDS.due}</h2>
      {gig && at !== null ? (
        <p className="caption">{JOURNAL_WORDS.dueOff(gig.name, at)}</p>
      ) : (
        <p className="caption">
          {due.length === 0 && JOURNAL_WORDS.dueNone} {JOURNAL_WORDS.dueHint}
        </p>
      )}
      <ul>
        {due.map(({ item, chart, title, fromBar, toBar }) => (
          <li key={item.id}>
            <button
              type="button"
              className="journal-open"
              aria-label={JOURNAL_WORDS.openLoop(title, fromBar, toBar)}
              onClick={() => {
                journal.open(chart, { fromBar, toBar });
                goTo('practise');
              }}
            >
              <b>{title}</b>
              <span className="caption">{JOURNAL_WORDS.dueLine(fromBar, toBar, today - item.due)}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
