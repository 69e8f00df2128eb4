import { useState } from 'react';
import type { Library } from '../../state/library/library';
import { LIBRARY_WORDS } from '../../words/library';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { useDesk, useDeskItself } from '../app/desk-context';
import { Asides } from './Asides';
import { IntakeNotes } from './IntakeNotes';
import { OwnChart } from './OwnChart';
import { SafetySection } from './SafetySection';
import { SetLists } from './SetLists';
import { ShelfTools } from './ShelfTools';
import { useLibraryState } from './use-library';

/** The player's own charts, the demo book and set lists, in the order of `PlaceSteps`. Opening a chart leaves every other as it was. */
export function Shelf({ library }: { readonly library: Library }) {
  return (
    <div className="shelf">
      <OwnCharts library={library} />
      <div className="shelf-side">
        <DemoBook />
        <SetLists library={library} />
      </div>
      <Asides library={library} />
      <SafetySection />
    </div>
  );
}

function OwnCharts({ library }: { readonly library: Library }) {
  const { run } = useDeskItself();
  const [query, setQuery] = useState('');
  const removal = useLibraryState(library, (state) => state.removal);
  // Drawn again when the shelf changes, and when a text does.
  const shelf = useDesk((state) => state.shelf);
  useLibraryState(library, (state) => state.edition);
  const any = shelf.some((entry) => entry.removed !== true);
  const found = library.search(query);
  const removed = library.removedCharts();
  return (
    <section aria-labelledby="own-charts">
      <h2 id="own-charts" tabIndex={-1}>
        {LIBRARY_WORDS.yourCharts}
      </h2>
      <ShelfTools library={library} query={query} onQuery={setQuery} />
      <IntakeNotes library={library} />
      <div aria-live="polite">
        {removal && (
          <p className="notice">
            {LIBRARY_WORDS.removed(removal.title)}
            <button type="button" className="plain" onClick={library.undoRemoval}>
              {LIBRARY_WORDS.undo}
            </button>
          </p>
        )}
      </div>
      {!any && <p className="caption">{LIBRARY_WORDS.noCharts}</p>}
      {any && found.length === 0 && <p className="caption">{LIBRARY_WORDS.noneFound(query)}</p>}
      <ul className="own-charts">
        {found.map((entry) => (
          <OwnChart key={entry.id} entry={entry} library={library} onOpen={() => run({ kind: 'open', chartId: entry.id })} />
        ))}
      </ul>
      {removed.length > 0 && (
        <details className="taken-away">
          <summary>{LIBRARY_WORDS.takenAway(removed.length)}</summary>
          <p className="caption">{LIBRARY_WORDS.keptThirtyDays}</p>
          <ul>
            {removed.map((entry) => (
              <li key={entry.id}>
                {entry.title}
                <button type="button" className="plain" onClick={() => library.restore(entry.id)}>
                  {LIBRARY_WORDS.undo}
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function DemoBook() {
  const { run, demos } = useDeskItself();
  const open = useDesk((state) => state.chartId);
  return (
    <section aria-labelledby="demo-book">
      <h2 id="demo-book" tabIndex={-1}>
        {LIBRARY_WORDS.demoBook}
      </h2>
      <p className="caption">{LIBRARY_WORDS.demoBookHint}</p>
      <ul className="demo-book">
        {demos.map((demo) => (
          <li key={demo.id}>
            <button
              type="button"
              className="shelf-chart"
              aria-current={demo.id === open || undefined}
              onClick={() => run({ kind: 'open', chartId: demo.id })}
            >
              <b>{demo.title}</b>
              <span className="caption">{MUSIC_TEXTS.teaches(demo.teaches)}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
