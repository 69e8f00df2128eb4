import type { Score } from '../music/score';
import type { PianoStroke } from '../vocabulary';

/*
 * Five charts, two evenings: every chord-to-chord move of the hand over a whole set, merged and counted, in the order of what learning
 * it unlocks. A bar is unlocked when every move that leads into it is known.
 *
 *   const plan = planSet([{ id: 'last-ferry', score }, …], knownKeys);
 *   plan.bars, plan.moves.length, plan.known, plan.next.slice(0, 4)
 *   // "212 bars use 17 moves; you have 9; these 4 cover most of the rest"
 *
 * Keep `HandMove.key` of what is learned (ticked off). The same shapes in another key are the same move; `places` lists where it starts.
 */

/** The hand going from one chord to the next. */
export interface HandMove {
  /** Stable name of the move: both hand shapes and the way between, whatever the key. */
  readonly key: string;
  readonly fromChord: string;
  readonly toChord: string;
  /** Notes of the hand before and after, ascending, as where it first occurs. */
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** How often it is played over the whole set. */
  readonly count: number;
  /** Pitch classes of the outer note from which it is played, ascending. */
  readonly places: readonly number[];
  /** Charts it occurs in, by id. */
  readonly charts: readonly string[];
  /** Where it first occurs. */
  readonly first: { readonly chart: string; readonly bar: number };
}

/** A move to learn, and what it opens. */
export interface NextMove {
  readonly move: HandMove;
  /** Bars that can be played whole once this and all before it are known. */
  readonly unlocks: number;
  /** Share of all bars that can then be played. */
  readonly covered: number;
}

/** What a set asks of the hand. */
export interface SetPlan {
  readonly bars: number;
  /** The most frequent first. */
  readonly moves: readonly HandMove[];
  /** How many of them are known. */
  readonly known: number;
  /** Share of the bars that can be played with what is known. */
  readonly covered: number;
  /** The others, in the order of what they unlock. */
  readonly next: readonly NextMove[];
  /** How many of `next` bring the share of playable bars to four in five, at least one if any is left. */
  readonly most: number;
}

/** What counts as most of the rest. */
const MOST = 0.8;

/** The plan of a set of arranged charts; `known` holds keys of moves. Deterministic. */
export function planSet(charts: readonly { readonly id: string; readonly score: Score }[], known: ReadonlySet<string>): SetPlan {
  const moves = new Map<string, HandMove>();
  const bars: (readonly string[])[] = [];
  for (const { id, score } of charts) {
    const found = movesOf(score);
    score.bars.forEach((bar, index) => {
      const here = found.filter(({ toTick }) => toTick >= bar.tick && toTick < bar.tick + bar.ticks);
      bars.push([...new Set(here.map(({ key }) => key))]);
      for (const { key, before, after } of here) {
        const held = moves.get(key);
        const first = { chart: id, bar: index };
        const place = (before.notes.at(-1) ?? 0) % 12;
        moves.set(
          key,
          held
            ? { ...held, count: held.count + 1, places: joined(held.places, place).sort((a, b) => a - b), charts: joined(held.charts, id) }
            : {
                key,
                fromChord: before.chord,
                toChord: after.chord,
                from: before.notes,
                to: after.notes,
                count: 1,
                places: [place],
                charts: [id],
                first,
              },
        );
      }
    });
  }
  const ordered = [...moves.values()].sort((a, b) => b.count - a.count || (a.key < b.key ? -1 : 1));
  const next = inOrder(ordered, bars, known);
  const covered = share(bars, known);
  const enough = next.findIndex((step) => step.covered >= MOST);
  return {
    bars: bars.length,
    moves: ordered,
    known: ordered.filter(({ key }) => known.has(key)).length,
    covered,
    next,
    most: next.length === 0 ? 0 : enough === -1 ? next.length : enough + 1,
  };
}

/** Repeatedly the move that unlocks most; of several, the one that brings most bars nearer, then the more frequent. */
function inOrder(moves: readonly HandMove[], bars: readonly (readonly string[])[], known: ReadonlySet<string>): NextMove[] {
  const have = new Set(known);
  const left = new Map(moves.filter(({ key }) => !have.has(key)).map((move) => [move.key, move]));
  const next: NextMove[] = [];
  while (left.size > 0) {
    const worth = new Map<string, { unlocks: number; nearer: number }>();
    for (const bar of bars) {
      const missing = bar.filter((key) => !have.has(key));
      for (const key of missing) {
        const held = worth.get(key) ?? { unlocks: 0, nearer: 0 };
        worth.set(key, { unlocks: held.unlocks + (missing.length === 1 ? 1 : 0), nearer: held.nearer + 1 / missing.length });
      }
    }
    const of = (key: string) => worth.get(key) ?? { unlocks: 0, nearer: 0 };
    const best = [...left.values()].sort(
      (a, b) =>
        of(b.key).unlocks - of(a.key).unlocks || of(b.key).nearer - of(a.key).nearer || b.count - a.count || (a.key < b.key ? -1 : 1),
    )[0];
    if (!best) break;
    const { unlocks } = of(best.key);
    have.add(best.key);
    left.delete(best.key);
    next.push({ move: best, unlocks, covered: share(bars, have) });
  }
  return next;
}

const joined = <Item>(items: readonly Item[], item: Item): Item[] => (items.includes(item) ? [...items] : [...items, item]);

const share = (bars: readonly (readonly string[])[], known: ReadonlySet<string>): number =>
  bars.length === 0 ? 1 : bars.filter((bar) => bar.every((key) => known.has(key))).length / bars.length;

interface HandPlace {
  readonly chord: string;
  readonly tick: number;
  readonly notes: readonly number[];
}

interface FoundMove {
  readonly key: string;
  /** Tick of the chord that is moved to, where it is written: an early stroke belongs to the bar it looks into. */
  readonly toTick: number;
  readonly before: HandPlace;
  readonly after: HandPlace;
}

function movesOf(score: Score): FoundMove[] {
  const strokes = score.parts.rightHand.length > 0 ? score.parts.rightHand : score.parts.leftHand;
  const places = placesOf(strokes, score);
  return places.flatMap((after, index) => {
    const before = index > 0 ? places[index - 1] : score.closed ? places.at(-1) : undefined;
    if (!before || before.chord === after.chord) return [];
    return [{ key: moveKey(before.notes, after.notes), toTick: after.tick, before, after }];
  });
}

/** The hand on each chord: the notes of its first octave and first inner stroke. */
function placesOf(strokes: readonly PianoStroke[], { fromTick, toTick, closed }: Score): HandPlace[] {
  const groups: PianoStroke[][] = [];
  for (const stroke of strokes) {
    if (stroke.role === 'approach') continue;
    const group = groups.at(-1);
    if (group?.[0]?.chord === stroke.chord) group.push(stroke);
    else groups.push([stroke]);
  }
  return groups.map((group): HandPlace => {
    const first = group[0];
    const inner = group.find(({ role }) => role !== first?.role && role !== 'approach');
    const notes = [...new Set([...(first?.midi ?? []), ...(inner?.midi ?? [])])].sort((a, b) => a - b);
    const into = (first?.tick ?? 0) + (first?.leadTicks ?? 0);
    const tick = into < toTick ? into : closed ? fromTick + (into - toTick) : toTick - 1;
    return { chord: first?.chord ?? '', tick, notes };
  });
}

/**
 * Both shapes as the outer note with what lies inside it, and the way of the outer note: the same hand in another key or octave.
 * Example: `3 8 > -1: 4 9`.
 */
function moveKey(from: readonly number[], to: readonly number[]): string {
  const outer = (notes: readonly number[]) => notes.at(-1) ?? 0;
  const inside = (notes: readonly number[]) => {
    const below = notes.map((midi) => (((outer(notes) - midi) % 12) + 12) % 12).filter((semitones) => semitones !== 0);
    return [...new Set(below)].sort((a, b) => a - b).join(' ');
  };
  const way = (((outer(to) - outer(from) + 6) % 12) + 12) % 12;
  return `${inside(from)} > ${way - 6}: ${inside(to)}`;
}
