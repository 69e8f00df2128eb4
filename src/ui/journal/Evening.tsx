import { useEffect, useId, useRef, useState } from 'react';
import type { Journal } from '../../state/journal/journal';
import type { SetStudy } from '../../state/journal/journal-state';
import type { SetList } from '../../state/library/set-list';
import { JOURNAL_WORDS } from '../../words/journal';
import { Moves } from './Moves';
import { SetPencilLists } from './SetPencilLists';
import { momentOfSet, useJournalState } from './use-journal';

/** Five charts, two evenings: a set list, and what it asks of the hand. */
export function Evening(props: { readonly journal: Journal; readonly sets: readonly SetList[]; readonly gig: SetList | null }) {
  const { journal, sets, gig } = props;
  const study = useJournalState(journal, (state) => state.study);
  const [asked, setAsked] = useState<string | null>(study?.set ?? null);
  const id = useId();
  const choose = (set: SetList | undefined): void => {
    setAsked(set?.id ?? null);
    if (set) void journal.studySet(set);
  };
  // The set may have been changed since it was counted.
  const stale = useRef(sets.find((set) => set.id === study?.set));
  useEffect(() => {
    if (stale.current) void journal.studySet(stale.current);
    stale.current = undefined;
  }, [journal]);
  return (
    <section className="evening" aria-labelledby="evening">
      <h2 id="evening">{JOURNAL_WORDS.evening}</h2>
      {sets.length === 0 ? (
        <p>
          {JOURNAL_WORDS.noSets} <a href="#/chart">{JOURNAL_WORDS.toSets}</a>
        </p>
      ) : (
        <div className="journal-row">
          <label htmlFor={id}>{JOURNAL_WORDS.chooseSet}</label>
          <select
            id={id}
            className="line-field"
            value={asked ?? ''}
            onChange={(event) => choose(sets.find((set) => set.id === event.target.value))}
          >
            <option value="">{JOURNAL_WORDS.choose}</option>
            {sets.map((set) => (
              <option key={set.id} value={set.id}>
                {JOURNAL_WORDS.setOption(set.name, momentOfSet(set))}
              </option>
            ))}
          </select>
          {asked === null && gig && (
            <button type="button" className="key" onClick={() => choose(gig)}>
              {JOURNAL_WORDS.countMoves(gig.name)}
            </button>
          )}
        </div>
      )}
      <div aria-live="polite">{asked !== null && study === null && <p className="caption">{JOURNAL_WORDS.counting}</p>}</div>
      {study !== null && study.set === asked && <Study journal={journal} study={study} />}
    </section>
  );
}

function Study({ journal, study }: { readonly journal: Journal; readonly study: SetStudy }) {
  const { plan, unread } = study;
  return (
    <>
      {plan.bars === 0 ? (
        <p>{JOURNAL_WORDS.emptySet}</p>
      ) : (
        <>
          <p className="journal-sum">{JOURNAL_WORDS.sum(plan.bars, plan.moves.length, plan.known, plan.most)}</p>
          <p className="caption">{JOURNAL_WORDS.covered(plan.covered)}</p>
        </>
      )}
      {unread.length > 0 && <p className="caption">{JOURNAL_WORDS.unreadCharts(unread)}</p>}
      <Moves journal={journal} plan={plan} />
      {plan.bars > 0 && <SetPencilLists key={study.set} journal={journal} />}
    </>
  );
}
