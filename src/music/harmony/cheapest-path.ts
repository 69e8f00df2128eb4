/**
 * The cheapest way through a row of layers, one candidate from each: dynamic programming, exact.
 *
 * Costs are whole numbers, so sums are exact and ties are real; of equally cheap ways the one whose candidates stand earlier
 * in their lists wins, compared from the last layer backwards.
 *
 * A closed row also pays for the step from the last layer back to the first. Trying every first candidate would multiply the
 * work, so first candidates are tried in the order of what they cost at least (the open row from them on), and a try is given
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
  const unary = layers.map((layer, index) => {
    if (layer.length === 0) throw new Error(`layer ${index} has no candidate`);
    return layer.map((candidate) => cost(candidate, index));
  });
  const matrices = stepMatrices(step);
  const steps = layers.map((layer, index) => {
    const before = index === 0 ? (closed ? layers[count - 1] : undefined) : layers[index - 1];
    return before ? matrices(before, layer) : [];
  });
  const rest = costToEnd(unary, steps);
  const first = unary[0] ?? [];
  if (!closed || count === 1) return follow(unary, steps, undefined, rest, Number.POSITIVE_INFINITY, closed) ?? { choice: [], cost: 0 };
  const order = first
    .map((own, index) => ({ index, least: own + (rest[0]?.[index] ?? 0) }))
    .sort((a, b) => a.least - b.least || a.index - b.index);
  let best: { choice: number[]; cost: number } | undefined;
  for (const { index, least } of order) {
    if (best && least >= best.cost) break;
    const found = follow(unary, steps, index, rest, best?.cost ?? Number.POSITIVE_INFINITY, true);
    if (found && (!best || found.cost < best.cost)) best = found;
  }
  return best ?? { choice: [], cost: 0 };
}

type Steps = Int32Array | readonly number[];

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
function costToEnd(unary: readonly (readonly number[])[], steps: readonly Steps[]): number[][] {
  const rest: number[][] = unary.map((layer) => layer.map(() => 0));
  for (let layer = unary.length - 2; layer >= 0; layer--) {
    const next = unary[layer + 1] ?? [];
    const matrix = steps[layer + 1] ?? [];
    const after = rest[layer + 1] ?? [];
    const here = rest[layer] ?? [];
    for (let from = 0; from < here.length; from++) {
      let least = Number.POSITIVE_INFINITY;
      for (let to = 0; to < next.length; to++) {
        const sum = (matrix[from * next.length + to] ?? 0) + (next[to] ?? 0) + (after[to] ?? 0);
        if (sum < least) least = sum;
      }
      here[from] = least;
    }
  }
  return rest;
}

/** The cheapest way from `start` (or from anywhere), leaving out whatever cannot come in under `limit`. */
function follow(
  unary: readonly (readonly number[])[],
  steps: readonly Steps[],
  start: number | undefined,
  rest: readonly (readonly number[])[],
  limit: number,
  closed: boolean,
): { choice: number[]; cost: number } | undefined {
  const came: Int32Array[] = [];
  let sums = (unary[0] ?? []).map((own, index) => (start === undefined || index === start ? own : Number.POSITIVE_INFINITY));
  for (let layer = 1; layer < unary.length; layer++) {
    const own = unary[layer] ?? [];
    const matrix = steps[layer] ?? [];
    const toEnd = rest[layer] ?? [];
    const from = new Int32Array(own.length);
    const next: number[] = own.map(() => Number.POSITIVE_INFINITY);
    for (let before = 0; before < sums.length; before++) {
      const sum = sums[before] ?? 0;
      if (sum === Number.POSITIVE_INFINITY) continue;
      for (let to = 0; to < own.length; to++) {
        const total = sum + (matrix[before * own.length + to] ?? 0) + (own[to] ?? 0);
        if (total < (next[to] ?? 0) && total + (toEnd[to] ?? 0) < limit) {
          next[to] = total;
          from[to] = before;
        }
      }
    }
    came.push(from);
    sums = next;
  }
  const width = (unary[0] ?? []).length;
  let best = Number.POSITIVE_INFINITY;
  let end = -1;
  for (let index = 0; index < sums.length; index++) {
    const back = closed ? ((steps[0] ?? [])[index * width + (start ?? index)] ?? 0) : 0;
    const total = (sums[index] ?? 0) + back;
    if (total < best && total < limit) {
      best = total;
      end = index;
    }
  }
  if (end < 0) return undefined;
  const choice = [end];
  for (let layer = came.length - 1; layer >= 0; layer--) choice.unshift((came[layer] ?? new Int32Array())[choice[0] ?? 0] ?? 0);
  return { choice, cost: best };
}
