/**
 * The candidate closest to `text` by edit distance (insert, delete, replace, exchange of neighbours), letter case apart; the first of several.
 * Null when none is within `reach` edits; by default half the length of `text`, at least 2. Texts over 40 units are never compared.
 * `nearest('tmepo', ['title', 'tempo'])` is `'tempo'`.
 */
export function nearest(text: string, candidates: Iterable<string>, reach = Math.max(2, Math.floor(text.length / 2))): string | null {
  if (text.length > 40) return null;
  const wanted = text.toLowerCase();
  let best: string | null = null;
  let bestDistance = reach + 1;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - text.length) >= bestDistance) continue;
    const distance = editDistance(wanted, candidate.toLowerCase());
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** Least number of inserted, deleted, replaced or exchanged (neighbouring) units that turns `a` into `b`. */
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min(at(previous, j) + 1, at(row, j - 1) + 1, at(previous, j - 1) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, at(before, j - 2) + 1);
      row.push(cost);
    }
    before = previous;
    previous = row;
  }
  return at(previous, b.length);
}

const at = (row: readonly number[], index: number): number => row[index] ?? 0;
