import { CHART_SCREEN } from '../../words/chart-screen';
import { useDesk, useDeskItself } from '../app/desk-context';

/** The player's own charts, and the demo book beside them. Opening one leaves every other as it was. */
export function Shelf() {
  const { run, demos } = useDeskItself();
  const shelf = useDesk((state) => state.shelf);
  const open = useDesk((state) => state.chartId);
  return (
    <div className="shelf">
      <section aria-labelledby="own-charts">
        <h2 id="own-charts">{CHART_SCREEN.yourCharts}</h2>
        {shelf.length === 0 && <p className="caption">{CHART_SCREEN.noCharts}</p>}
        <ul>
          {shelf.map((entry) => (
            <li key={entry.id}>
              <ShelfButton
                title={entry.title}
                note={new Date(entry.changed).toLocaleDateString()}
                current={entry.id === open}
                onOpen={() => run({ kind: 'open', chartId: entry.id })}
              />
            </li>
          ))}
        </ul>
      </section>
      <section aria-labelledby="demo-book">
        <h2 id="demo-book">{CHART_SCREEN.demoBook}</h2>
        <ul>
          {demos.map((demo) => (
            <li key={demo.id}>
              <ShelfButton
                title={demo.title}
                note={demo.teaches}
                current={demo.id === open}
                onOpen={() => run({ kind: 'open', chartId: demo.id })}
              />
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}

function ShelfButton(props: { readonly title: string; readonly note: string; readonly current: boolean; readonly onOpen: () => void }) {
  return (
    <button type="button" className="shelf-chart" aria-current={props.current || undefined} onClick={props.onOpen}>
      <b>{props.title}</b>
      <span className="caption">{props.note}</span>
    </button>
  );
}
