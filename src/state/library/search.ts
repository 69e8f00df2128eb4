import type { ShelfEntry } from '../desk-state';

/** The player's own charts out of the shelf, newest first: all that were not taken away. */
export const ownCharts = (shelf: readonly ShelfEntry[]): readonly ShelfEntry[] => shelf.filter(({ removed }) => removed !== true);

/**
 * Charts in which every word of `query` is found, in title or text, whatever the letter case and accents; those with all words in the title first.
 * An empty query finds all.
 */
export function searched(charts: readonly ShelfEntry[], textOf: (id: string) => string, query: string): readonly ShelfEntry[] {
  const words = folded(query)
    .split(/\s+/)
    .filter((word) => word !== '');
  if (words.length === 0) return charts;
  const inTitle = charts.filter(({ title }) => words.every((word) => folded(title).includes(word)));
  const inText = charts.filter(
    (chart) => !inTitle.includes(chart) && words.every((word) => folded(`${chart.title}\n${textOf(chart.id)}`).includes(word)),
  );
  return [...inTitle, ...inText];
}

const folded = (text: string): string =>
  text.normalize('NFD').replace(/\p{M}/gu, '').replaceAll('♭', 'b').replaceAll('♯', '#').toLowerCase();
