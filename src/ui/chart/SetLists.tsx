import type { Library } from '../../state/library/library';
import type { SetList } from '../../state/library/set-list';
import { LIBRARY_WORDS } from '../../words/library';
import { useDesk, useDeskItself } from '../app/desk-context';
import { goTo } from '../app/use-place';
import { SetCharts, useTitleOf } from './SetCharts';
import { useLibraryState } from './use-library';

/** Set lists: charts for one evening in their order, with its date. */
export function SetLists({ library }: { readonly library: Library }) {
  const sets = useLibraryState(library, (state) => state.sets);
  return (
    <section aria-labelledby="set-lists">
      <h2 id="set-lists" tabIndex={-1}>
        {LIBRARY_WORDS.sets}
      </h2>
      {sets.length === 0 && <p className="caption">{LIBRARY_WORDS.noSets}</p>}
      <ul className="set-lists">
        {sets.map((set) => (
          <li key={set.id}>
            <OneSet set={set} library={library} />
          </li>
        ))}
      </ul>
      <button type="button" className="key" onClick={() => library.addSet(LIBRARY_WORDS.newSetName)}>
        {LIBRARY_WORDS.newSet}
      </button>
    </section>
  );
}

function OneSet({ set, library }: { readonly set: SetList; readonly library: Library }) {
  const open = useDesk((state) => state.chartId);
  const titleOf = useTitleOf();
  const title = titleOf(open);
  const day = set.date === null ? LIBRARY_WORDS.noDate : new Date(`${set.date}T12:00:00`).toLocaleDateString();
  return (
    <details className="set-list">
      <summary>
        <b>{set.name}</b>
        <span className="caption">
          {day} · {LIBRARY_WORDS.setCharts(set.charts.length)}
        </span>
      </summary>
      <div className="set-fields">
        <label>
          {LIBRARY_WORDS.setName}
          <input
            className="line-field"
            value={set.name}
            maxLength={120}
            onChange={(event) => library.changeSet(set.id, { name: event.target.value })}
          />
        </label>
        <label>
          {LIBRARY_WORDS.setDate}
          <input
            type="date"
            className="line-field"
            value={set.date ?? ''}
            onChange={(event) => library.changeSet(set.id, { date: event.target.value || null })}
          />
        </label>
      </div>
      <SetCharts set={set} library={library} />
      <div className="set-acts">
        {title !== null && (
          <button type="button" className="key" onClick={() => library.changeSet(set.id, { charts: [...set.charts, open] })}>
            {LIBRARY_WORDS.addOpen(title)}
          </button>
        )}
        {set.charts.length > 0 && <MovesKey set={set} />}
        <button type="button" className="plain" onClick={() => library.removeSet(set.id)}>
          {LIBRARY_WORDS.removeSet}
        </button>
      </div>
    </details>
  );
}

/** Leads to what the set asks of the hand, counted, and to its pencil lists: both stand at the head of the Journal place. */
function MovesKey({ set }: { readonly set: SetList }) {
  const { rooms } = useDeskItself();
  const study = async (): Promise<void> => {
    // A journal that cannot be fetched or counted says so in its own place.
    await rooms
      .journal()
      .then((journal) => journal.studySet(set))
      .catch(() => undefined);
    goTo('journal');
  };
  return (
    <button type="button" className="key" onClick={() => void study()}>
      {LIBRARY_WORDS.movesOfSet}
    </button>
  );
}
