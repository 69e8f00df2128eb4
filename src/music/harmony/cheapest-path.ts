/**
 * The cheapest way through a row of layers, one candidate from each: dynamic programming, exact.
 *
 * Costs are whole numbers, so sums are exact and ties are real; of equally cheap ways the one whose candidates stand earlier
 * in their lists wins, compared from the last layer backwards (in a ring, from the layer before the cut).
 *
 * A closed row also pays for the step from the last layer back to the first. Trying every first candidate would multiply the
 * work, so the ring is cut where there are fewest candidates, and these are tried in the order of what they cost at least (the open row from them on), and a try is given
 * up as soon as it can no longer beat the best one found.
 */
export interface Layers<Candidate> {
  readonly layers: readonly (readonly Candidate[])[];
  /** Cost of a candidate by itself. */
  readonly cost: (candidate: Candidate, layer: number) => number;
  /** Cost of going from a candidate to one of the next layer (of the first layer from the last, when closed). `FORBIDDEN` rules it out. */
  readonly step: (from: Candidate, to: Candidate) => number;
  readonly closed: boolean;
}

/** A cost that no sum of real costs reaches. */
export const FORBIDDEN = 1_000_000;

/** The index chosen in each layer, and what the way costs. Throws when a layer is empty. */
export function cheapestPath<Candidate>({ layers, cost, step, closed }: Layers<Candidate>): {
  readonly choice: number[];
  readonly cost: number;
} {
  const count = layers.length;
  if (count === 0) return { choice: [], cost: 0 };
  layers.forEach((layer, index) => {
    if (layer.length === 0) throw new Error(`layer ${index} has no candidate`);
  });
  // A ring can be cut anywhere: the cut with the fewest candidates leaves the fewest starts to try.
  const cut = closed ? fewest(layers) : 0;
  const ring = layers.map((_, index) => (index + cut) % count);
  const at = (index: number): readonly Candidate[] => layers[ring[index] ?? 0] ?? [];
  const unary = ring.map((layer) => Float64Array.from(layers[layer] ?? [], (candidate) => cost(candidate, layer)));
  const matrices = stepMatrices(step);
  const steps = ring.map((_, index) => (index > 0 || closed ? matrices(at((index + count - 1) % count), at(index)) : NO_STEPS));
  const rest = costToEnd(unary, steps);
  const found =
    closed && count > 1 ? cheapestRing(unary, steps, rest) : follow(unary, steps, undefined, rest, Number.POSITIVE_INFINITY, closed);
  const choice: number[] = [];
  found?.choice.forEach((chosen, index) => {
    choice[ring[index] ?? 0] = chosen;
  });
  return { choice, cost: found?.cost ?? 0 };
}

type Costs = Float64Array;
type Steps = Int32Array;
interface Way {
  readonly choice: number[];
  readonly cost: number;
}

const NO_STEPS: Steps = new Int32Array();

function fewest(layers: readonly (readonly unknown[])[]): number {
  return layers.reduce((best, layer, index) => (layer.length < (layers[best]?.length ?? 0) ? index : best), 0);
}

function cheapestRing(unary: readonly Costs[], steps: readonly Steps[], rest: readonly Costs[]): Way | undefined {
  const order = Array.from(unary[0] ?? [], (own, index) => ({ index, least: own + (rest[0]?.[index] ?? 0) })).sort(
    (a, b) => a.least - b.least || a.index - b.index,
  );
  let best: Way | undefined;
  for (const { index, least } of order) {
    if (best && least >= best.cost) break;
    best = follow(unary, steps, index, rest, best?.cost ?? Number.POSITIVE_INFINITY, true) ?? best;
  }
  return best;
}

/** Costs from every candidate of one layer to every candidate of another; the same two lists are worked out once. */
function stepMatrices<Candidate>(
  step: Layers<Candidate>['step'],
): (before: readonly Candidate[], layer: readonly Candidate[]) => Int32Array {
  const known = new Map<readonly Candidate[], Map<readonly Candidate[], Int32Array>>();
  return (before, layer) => {
    const from = known.get(before) ?? new Map<readonly Candidate[], Int32Array>();
    known.set(before, from);
    const found = from.get(layer);
    if (found) return found;
    const matrix = new Int32Array(before.length * layer.length);
    let at = 0;
    for (const here of before) for (const to of layer) matrix[at++] = step(here, to);
    from.set(layer, matrix);
    return matrix;
  };
}

/** For every candidate, the least that the layers after it cost on an open way. */
function costToEnd(unary: readonly Costs[], steps: readonly Steps[]): Costs[] {
  const rest = unary.map((layer) => new Float64Array(layer.length));
  for (let layer = unary.length - 2; layer >= 0; layer--) {
    const next = unary[layer + 1] as Costs;
    const matrix = steps[layer + 1] as Steps;
    const after = rest[layer + 1] as Costs;
    const here = rest[layer] as Costs;
    const width = next.length;
    for (let from = 0; from < here.length; from++) {
      let least = Number.POSITIVE_INFINITY;
      for (let to = 0; to < width; to++) {
        const sum = (matrix[from * width + to] as number) + (next[to] as number) + (after[to] as number);
        if (sum < least) least = sum;
      }
      here[from] = least;
    }
  }
  return rest;
}

/** The cheapest way from `start` (or from anywhere), leaving out whatever cannot come in under `limit`; undefined when nothing can. */
function follow(
  unary: readonly Costs[],
  steps: readonly Steps[],
  start: number | undefined,
  rest: readonly Costs[],
  limit: number,
  closed: boolean,
): Way | undefined {
  const came: Int32Array[] = [];
  let sums = (unary[0] as Costs).map((own, index) => (start === undefined || index === start ? own : Number.POSITIVE_INFINITY));
  for (let layer = 1; layer < unary.length; layer++) {
    const own = unary[layer] as Costs;
    const matrix = steps[layer] as Steps;
    const toEnd = rest[layer] as Costs;
    const width = own.length;
    const from = new Int32Array(width);
    const next = new Float64Array(width).fill(Number.POSITIVE_INFINITY);
    for (let before = 0; before < sums.length; before++) {
      const sum = sums[before] as number;
      if (sum === Number.POSITIVE_INFINITY) continue;
      for (let to = 0; to < width; to++) {
        const total = sum + (matrix[before * width + to] as number) + (own[to] as number);
        if (total < (next[to] as number) && total + (toEnd[to] as number) < limit) {
          next[to] = total;
          from[to] = before;
        }
      }
    }
    came.push(from);
    sums = next;
  }
  const width = (unary[0] as Costs).length;
  let best = limit;
  let end = -1;
  for (let index = 0; index < sums.length; index++) {
    const back = closed ? (steps[0]?.[index * width + (start ?? index)] ?? 0) : 0;
    const total = (sums[index] as number) + back;
    if (total < best) {
      best = total;
      end = index;
    }
  }
  if (end < 0) return undefined;
  const choice = new Array<number>(unary.length);
  choice[unary.length - 1] = end;
  for (let layer = unary.length - 1; layer > 0; layer--) choice[layer - 1] = came[layer - 1]?.[choice[layer] ?? 0] ?? 0;
  return { choice, cost: best };
}
