import { useMemo } from 'react';
import type { StepGrid } from '../../layout/grid/cards';
import { stepGrid } from '../../layout/step-grid';
import type { Score } from '../../music/score';

/** Grids by the identity of their score: worked out once for each score that is drawn or heard. */
export function useDrawnScores(whole: Score | undefined): {
  readonly gridOf: (score: Score) => StepGrid;
} {
  return useMemo(() => {
    const grids = new WeakMap<Score, StepGrid>();
    return {
      gridOf: (score) => kept(grids, score, () => stepGrid(score, fits(whole, score) ? whole : score)),
    };
  }, [whole]);
}

/** The whole form belongs to a score only when both come from forms of the same length and direction. */
const fits = (whole: Score | undefined, score: Score): whole is Score =>
  whole !== undefined && whole.form.bars.length === score.form.bars.length && whole.clave.direction === score.clave.direction;

function kept<Value>(store: WeakMap<Score, Value>, score: Score, make: () => Value): Value {
  const before = store.get(score);
  if (before !== undefined) return before;
  const made = make();
  store.set(score, made);
  return made;
}
