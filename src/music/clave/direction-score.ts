import { assert } from '../../vocabulary';
import { PAIR_WEIGHTS, STEP_WEIGHTS } from './direction-weights';

/**
 * Which direction a rhythm of 16 steps states, as a number: positive 2-3, negative 3-2.
 *
 * The score is a sum of terms, each antisymmetric under exchanging the two bars, so that a rhythm and its rotation by half a cycle
 * always get opposite scores and a rhythm of two equal bars gets exactly 0. Eight terms compare one step in both bars,
 * `x[i] − x[i+8]`; the rest compare a pair of steps with the same pair half a cycle on. The weights were fitted to rhythms labelled by
 * experts (see `direction-weights.ts`).
 */

/** Length of the rhythms that can be scored. */
export const SCORED_STEPS = 16;
const SIDE = SCORED_STEPS / 2;

/** One pair term: `x[first]·x[second]` minus the same pair half a cycle on; `first` is below 8. */
export interface PairTerm {
  readonly first: number;
  readonly second: number;
}

/**
 * Every pair of steps once, with its partner half a cycle on left out: 28 within a bar, 28 across the two.
 * A step with its own twin is left out, because that term is always 0.
 */
export const PAIR_TERMS: readonly PairTerm[] = [
  ...eachPair((first, second) => ({ first, second })),
  ...eachPair((first, second) => ({ first, second: second + SIDE })),
];

function eachPair(make: (first: number, second: number) => PairTerm): readonly PairTerm[] {
  const terms: PairTerm[] = [];
  for (let first = 0; first < SIDE; first += 1) for (let second = first + 1; second < SIDE; second += 1) terms.push(make(first, second));
  return terms;
}

/** The terms of a rhythm in the order of the weights: eight for steps, then one for each of `PAIR_TERMS`; each is −1, 0 or 1. */
export function directionTerms(grid: readonly boolean[]): readonly number[] {
  assert(grid.length === SCORED_STEPS, `a scored rhythm has ${SCORED_STEPS} steps, got ${grid.length}`);
  const at = (step: number): number => (grid[step % SCORED_STEPS] ? 1 : 0);
  const steps = Array.from({ length: SIDE }, (_, step) => at(step) - at(step + SIDE));
  const pairs = PAIR_TERMS.map(({ first, second }) => at(first) * at(second) - at(first + SIDE) * at(second + SIDE));
  return [...steps, ...pairs];
}

/**
 * The direction score of a rhythm of 16 steps: positive states 2-3, negative 3-2, near 0 neither. It tells direction, not quality.
 * Throws on any other length. Example: the bass tumbao `...x..x. ...x..x.` scores 0.
 */
export function directionScore(grid: readonly boolean[]): number {
  const weights = [...STEP_WEIGHTS, ...PAIR_WEIGHTS];
  let score = 0;
  for (const [index, term] of directionTerms(grid).entries()) if (term !== 0) score += term * (weights[index] ?? 0);
  return score;
}
