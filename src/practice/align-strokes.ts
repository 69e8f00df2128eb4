import type { ExpectedStroke, PlayedStroke } from './labelled';
import { LIMITS } from './timing-limits';

/*
 * Which stroke played answers which stroke asked for: the order-preserving set of pairs with the highest gain, by dynamic programming.
 * A pair gains what it would cost to call one stroke missed and the other extra, less what its distance and its notes make unlikely.
 * Pairs are visited by stroke asked for; a tree of prefix maxima over the strokes played keeps it to n log n.
 */

/** One stroke asked for, answered. */
export interface Pair {
  readonly expected: number;
  readonly played: number;
  /** Moment from which the deviation counts: the stroke's own, or that of the other accepted ending; seconds, the guide left out. */
  readonly due: number;
  readonly otherEnding: boolean;
}

/** A stroke asked for with the moments at which it may be played (seconds), and the lag with which it is looked for. */
export interface Due {
  readonly stroke: ExpectedStroke;
  readonly at: number;
  readonly otherAt: number | null;
  readonly lag: number;
}

/** Cost of a stroke left over, in half squared standard deviations; `reach` follows from it. */
const LEFT_OVER = 3.2;
/** Assumed spread, as a share of a step: with `LEFT_OVER`, a distance of `reach` gains nothing. */
const SPREAD = LIMITS.reach.value / Math.sqrt(4 * LEFT_OVER);
/** Cost of a stroke none of whose notes belong. */
const WRONG_NOTES = 2;

/** The pairs, ascending. `dues` and `played` ascending by moment. */
export function alignStrokes(dues: readonly Due[], played: readonly PlayedStroke[], pitched: boolean): Pair[] {
  const best = new PrefixBest(played.length);
  const chains: Chain[] = [];
  let first = 0;
  dues.forEach((due, expected) => {
    const reach = (LIMITS.reach.value * due.stroke.stepMs) / 1000;
    const earliest = Math.min(due.at, due.otherAt ?? due.at) + due.lag - reach;
    const latest = Math.max(due.at, due.otherAt ?? due.at) + due.lag + reach;
    while (first < played.length && (played[first]?.at ?? 0) < earliest - 1) first += 1;
    const row: Chain[] = [];
    for (let index = first; index < played.length; index += 1) {
      const stroke = played[index];
      if (!stroke || stroke.at > latest) break;
      if (stroke.at < earliest) continue;
      for (const found of pairings(due, expected, stroke, index, pitched)) {
        const before = best.below(index);
        row.push({ ...found, total: found.gain + (before?.total ?? 0), before });
      }
    }
    for (const chain of row) {
      best.put(chain.pair.played, chain);
      chains.push(chain);
    }
  });
  const pairs: Pair[] = [];
  for (let chain = best.below(played.length); chain; chain = chain.before) pairs.unshift(chain.pair);
  return pairs;
}

interface Chain {
  readonly pair: Pair;
  readonly gain: number;
  readonly total: number;
  readonly before: Chain | null;
}

function pairings(due: Due, expected: number, stroke: PlayedStroke, played: number, pitched: boolean): { pair: Pair; gain: number }[] {
  const sigma = (SPREAD * due.stroke.stepMs) / 1000;
  const notes = pitched ? WRONG_NOTES * (1 - likeness(due.stroke, stroke)) : 0;
  const at = (moment: number, otherEnding: boolean) => {
    const gain = 2 * LEFT_OVER - ((stroke.at - moment - due.lag) / sigma) ** 2 / 2 - notes;
    return gain > 0 ? [{ pair: { expected, played, due: moment, otherEnding }, gain }] : [];
  };
  const own = at(due.at, false);
  const other = due.otherAt === null ? [] : at(due.otherAt, true);
  return [...own, ...other].sort((a, b) => b.gain - a.gain).slice(0, 1);
}

/** Share of the notes, by pitch class, that the stroke asked for and the stroke played have in common. */
function likeness(expected: ExpectedStroke, played: PlayedStroke): number {
  const asked = new Set(expected.notes.flatMap(({ midi }) => (midi === null ? [] : [midi % 12])));
  const heard = new Set(played.notes.flatMap(({ midi }) => (midi === null ? [] : [midi % 12])));
  if (asked.size === 0 || heard.size === 0) return 1;
  const shared = [...heard].filter((pc) => asked.has(pc)).length;
  return (2 * shared) / (asked.size + heard.size);
}

/** The best chain that ends before a stroke played: a binary indexed tree of maxima. */
class PrefixBest {
  readonly #tree: (Chain | null)[];
  constructor(size: number) {
    this.#tree = new Array<Chain | null>(size + 1).fill(null);
  }
  /** The best chain that ends at an index below `index`. */
  below(index: number): Chain | null {
    let best: Chain | null = null;
    for (let at = index; at > 0; at -= at & -at) {
      const chain = this.#tree[at] ?? null;
      if (chain && (!best || chain.total > best.total)) best = chain;
    }
    return best;
  }
  put(index: number, chain: Chain): void {
    for (let at = index + 1; at < this.#tree.length; at += at & -at) {
      const held = this.#tree[at] ?? null;
      if (!held || chain.total > held.total) this.#tree[at] = chain;
    }
  }
}
