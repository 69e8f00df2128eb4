import { TICKS_PER_STEP } from '../vocabulary';
import { stepMsAt } from './gather-strokes';
import type { Take } from './take';
import { LIMITS } from './timing-limits';

/*
 * When a lag is a delay, and when the whole pattern is in the wrong place. The second is a strong thing to say to somebody, so it needs
 * two cycles that agree and that fit clearly better than the pattern in its place: people who vary a pattern are not displaced.
 */

/** The lag of one cycle of a take, in ticks (positive: late). */
export interface CycleLag {
  readonly fromPlayTick: number;
  /** Exclusive. */
  readonly toPlayTick: number;
  readonly lagTicks: number;
}

/** A lag of less than most of a step is no displacement: at 140 half notes a minute a step is shorter than two ordinary delays. */
export const MOST_OFFSET_STEPS = 0.85;

/** Steps by which a lag displaces the pattern: 0 for what counts as an offset of the device or the player. */
export function displacedSteps(take: Take, { lagTicks, fromPlayTick }: CycleLag): number {
  const stepMs = stepMsAt(take.tempo, fromPlayTick);
  const off = Math.abs(lagTicks) / TICKS_PER_STEP;
  if (off <= MOST_OFFSET_STEPS || off * stepMs <= LIMITS.offsetMostMs.value) return 0;
  return Math.min(Math.round(lagTicks / TICKS_PER_STEP), take.music.performance.clave.cycleSteps / 2);
}

/** The cycles that must agree, for a pattern that was displaced from the start or crossed; and for other slips on the way. */
const LEAST_CYCLES = { usual: 2, slip: 3 } as const;
/** Strokes that the displaced pattern must explain beyond the pattern in its place: below, a sparse pattern is anywhere. */
const LEAST_GAIN = 3;
/** Strokes in a cycle below which a pattern has no place of its own. */
const LEAST_PER_CYCLE = 3;
/** The displaced pattern must leave at most this share of the strokes unexplained that the pattern in its place leaves. */
const CLEARLY_BETTER = 0.6;

/**
 * The track without displacements that too little speaks for: those cycles get the best lag in place. `costs` holds, for every cycle,
 * the strokes left unexplained by each of `lags`.
 */
export function believed(
  take: Take,
  track: readonly CycleLag[],
  lags: readonly number[],
  costs: readonly (readonly number[])[],
  askedPerCycle: number,
): CycleLag[] {
  if (askedPerCycle < LEAST_PER_CYCLE) return track.map((cycle) => (displacedSteps(take, cycle) === 0 ? cycle : { ...cycle, lagTicks: 0 }));
  const steadied = withoutSlips(take, track);
  const steps = steadied.map((cycle) => displacedSteps(take, cycle));
  const found: CycleLag[] = [];
  for (let from = 0; from < steps.length; ) {
    let to = from + 1;
    while (to < steps.length && steps[to] === steps[from]) to += 1;
    const run = steadied.slice(from, to);
    const rows = costs.slice(from, to);
    if (steps[from] === 0) found.push(...run);
    else {
      const home = homeLag(lags, rows);
      const own = rows.reduce((sum, row, index) => sum + (row[lags.indexOf(run[index]?.lagTicks ?? 0)] ?? 0), 0);
      const half = take.music.performance.clave.cycleSteps / 2;
      const least = from === 0 || steps[from] === half ? LEAST_CYCLES.usual : LEAST_CYCLES.slip;
      const long = run.length >= Math.min(least, steps.length);
      const believable = long && usual(steps[from] ?? 0) && own <= CLEARLY_BETTER * home.cost && home.cost - own >= LEAST_GAIN;
      found.push(...(believable ? run : run.map((cycle) => ({ ...cycle, lagTicks: home.lag }))));
    }
    from = to;
  }
  return found;
}

/** People slip by beats and sides, or lag by one eighth; three or five eighths is another pattern. */
const usual = (steps: number): boolean => steps % 2 === 0 || Math.abs(steps) === 1;

/** The lag in place that leaves the fewest strokes of these cycles unexplained. */
function homeLag(lags: readonly number[], rows: readonly (readonly number[])[]): { lag: number; cost: number } {
  let best = { lag: 0, cost: Number.POSITIVE_INFINITY };
  lags.forEach((lag, index) => {
    if (Math.abs(lag) > MOST_OFFSET_STEPS * TICKS_PER_STEP) return;
    const cost = rows.reduce((sum, row) => sum + (row[index] ?? 0), 0);
    if (cost < best.cost) best = { lag, cost };
  });
  return best;
}

/** A single cycle that seems one step further off than its neighbour is noise of a sparse pattern: nobody slips by an eighth for a cycle. */
function withoutSlips(take: Take, track: readonly CycleLag[]): CycleLag[] {
  const steps = track.map((cycle) => displacedSteps(take, cycle));
  return track.map((cycle, index) => {
    const own = steps[index] ?? 0;
    if (own === steps[index - 1] || own === steps[index + 1]) return cycle;
    const near = [index - 1, index + 1].find((other) => Math.abs((steps[other] ?? 99) - own) === 1 && isSteadier(steps, other, own));
    const lagTicks = near === undefined ? undefined : track[near]?.lagTicks;
    return lagTicks === undefined ? cycle : { ...cycle, lagTicks };
  });
}

/** Whether a neighbour's displacement is the likelier one: it lasts two cycles, or it is even and the cycle's own is odd. */
function isSteadier(steps: readonly number[], neighbour: number, own: number): boolean {
  const there = steps[neighbour] ?? 0;
  const lasts = steps[neighbour - 1] === there || steps[neighbour + 1] === there;
  return lasts || (there % 2 === 0 && own % 2 !== 0);
}
