/** The most rungs that fit on one line of the sheet. */
const MOST_RUNGS = 10;
/** Half notes a minute that a careful step adds (common practice, no source: four at a time when three cycles are clean). */
const CAREFUL_STEP = 4;

/**
 * Tempi from now to the goal, in half notes a minute: now first, goal last, steps of four, or wider ones when there would be more
 * than ten rungs. With the goal reached or passed, the goal alone: `tempoLadder(62, 92)` is 62, 66, … 90, 92.
 */
export function tempoLadder(now: number, goal: number): number[] {
  if (now >= goal) return [goal];
  const step = Math.max(CAREFUL_STEP, Math.ceil((goal - now) / (MOST_RUNGS - 1)));
  const rungs: number[] = [];
  for (let tempo = now; tempo < goal; tempo += step) rungs.push(Math.round(tempo));
  return [...rungs, goal];
}
