import type { Library } from '../../state/library/library';
import { movedChart, type SetList } from '../../state/library/set-list';
import { LIBRARY_WORDS } from '../../words/library';
import { useDesk, useDeskItself } from '../app/desk-context';

/** The charts of one set list in their order; each opens, moves or is taken out. */
export function SetCharts({ set, library }: { readonly set: SetList; readonly library: Library }) {
  const { run } = useDeskItself();
  const titleOf = useTitleOf();
  const move = (from: number, to: number): void => library.changeSet(set.id, { charts: movedChart(set.charts, from, to) });
  const takeOut = (place: number): void => library.changeSet(set.id, { charts: set.charts.filter((_, at) => at !== place) });
  return (
    <ol className="set-charts">
      {set.charts.map((chartId, place) => {
        const title = titleOf(chartId);
        const name = title ?? LIBRARY_WORDS.goneChart;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a chart may stand in a set twice; its place is what it is
          <li key={`${place} ${chartId}`}>
            <button type="button" className="plain set-chart" disabled={title === null} onClick={() => run({ kind: 'open', chartId })}>
              {place + 1}. {name}
            </button>
            <button
              type="button"
              className="plain"
              aria-label={LIBRARY_WORDS.up(name)}
              disabled={place === 0}
              onClick={() => move(place, place - 1)}
            >
              ↑
            </button>
            <button
              type="button"
              className="plain"
              aria-label={LIBRARY_WORDS.down(name)}
              disabled={place === set.charts.length - 1}
              onClick={() => move(place, place + 1)}
            >
              ↓
            </button>
            <button type="button" className="plain" aria-label={LIBRARY_WORDS.takeOut(name)} onClick={() => takeOut(place)}>
              ×
            </button>
          </li>
        );
      })}
    </ol>
  );
}

/** The title of a chart by its id; null for one that is on no shelf. */
export function useTitleOf(): (id: string) => string | null {
  const { demos } = useDeskItself();
  const shelf = useDesk((state) => state.shelf);
  return (id) =>
    shelf.find((entry) => entry.id === id && entry.removed !== true)?.title ?? demos.find((demo) => demo.id === id)?.title ?? null;
}
