import type { Due } from '../../state/journal/due-items';
import type { Journal } from '../../state/journal/journal';
import { laidOut, sessionItems } from '../../state/journal/session-items';
import { JOURNAL_WORDS } from '../../words/journal';
import { useDeskItself } from '../app/desk-context';
import { goTo } from '../app/use-place';
import { useTitleOf } from '../chart/SetCharts';
import { sessionBlock } from './session-block';
import { useJournalState } from './use-journal';

/** What a session would be about, and the button that begins it. */
export function SessionOffer({ journal, due, today }: { readonly journal: Journal; readonly due: readonly Due[]; readonly today: number }) {
  const desk = useDeskItself();
  const { study, records, rests, session } = useJournalState(journal, (state) => state);
  const titleOf = useTitleOf();
  const items = sessionItems({ study, records }, due, titleOf, today, journal.zone);
  const { blocks, left } = laidOut(items, rests);
  const begin = (): void => {
    journal.startSession(items);
    goTo('practise');
    void import('./show-session').then(({ showSession }) => showSession(document, desk, journal));
  };
  return (
    <section aria-labelledby="session-offer">
      <h2 id="session-offer">{JOURNAL_WORDS.plan}</h2>
      <p className="caption">{items.length === 0 ? JOURNAL_WORDS.planNothing : JOURNAL_WORDS.planHint}</p>
      {items.length > 0 && (
        <>
          <ol className="journal-blocks">
            {blocks.map((item) => (
              <li key={item.id}>{sessionBlock(item)}</li>
            ))}
          </ol>
          {left.length > 0 && <p className="caption">{JOURNAL_WORDS.tomorrow(left.map(sessionBlock))}</p>}
          <label className="check">
            <input type="checkbox" checked={rests} onChange={(event) => journal.setRests(event.target.checked)} />
            <span>{JOURNAL_WORDS.rests}</span>
          </label>
          <button type="button" className="key" onClick={session ? journal.endSession : begin}>
            {session ? JOURNAL_WORDS.end : JOURNAL_WORDS.start}
          </button>
        </>
      )}
    </section>
  );
}
