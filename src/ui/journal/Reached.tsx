import { tempiReached } from '../../state/journal/by-day';
import type { KeptRecord } from '../../state/journal/journal-state';
import { JOURNAL_WORDS } from '../../words/journal';
import { useDesk } from '../app/desk-context';

/** The fastest clean pass on every chart. */
export function Reached({ records }: { readonly records: readonly KeptRecord[] }) {
  const unit = useDesk((state) => state.preferences.tempoUnit);
  const charts = tempiReached(records);
  if (charts.length === 0) return null;
  return (
    <section aria-labelledby="reached" className="journal-reached">
      <h2 id="reached">{JOURNAL_WORDS.reached}</h2>
      <p className="caption">{JOURNAL_WORDS.reachedHint}</p>
      <dl>
        {charts.map(({ chart, title, tempo, passes, clean }) => (
          <div key={chart}>
            <dt>{title}</dt>
            <dd>
              <b>{tempo === null ? JOURNAL_WORDS.notYet : JOURNAL_WORDS.tempi(tempo, tempo, unit)}</b>
              <span className="caption">{JOURNAL_WORDS.passes(clean, passes)}</span>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
