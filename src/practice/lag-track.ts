import { tempoAt, tickAt } from '../performance/tempo';
import { TICKS_PER_STEP } from '../vocabulary';
import { believed, type CycleLag, MOST_OFFSET_STEPS } from './displacement';
import { expectedStrokes } from './expected-strokes';
import type { ExpectedStroke, PlayedStroke } from './labelled';
import type { Take } from './take';
import { LIMITS } from './timing-limits';

/*
 * How far the whole pattern lay off its place, cycle by cycle. For every cycle and every lag (in quarter steps, up to half a cycle
 * either way) we count the strokes that the lag leaves unexplained; the cheapest path through all cycles, in which staying is free,
 * creeping is cheap and jumping is dear, is the track. So one bad cycle does not make a player crossed, two do; a player who slowly
 * runs away is followed; and a delay of the device is a lag like any other.
 */

const QUARTER_STEP = TICKS_PER_STEP / 4;
/** A stroke within the first of these explains fully, in ticks; beyond, its worth falls with this standard deviation. */
const FULL_TICKS = 0.22 * TICKS_PER_STEP;
const FALL_TICKS = 0.14 * TICKS_PER_STEP;
/** Costs in unexplained strokes. Chosen so that two cycles of evidence turn the verdict and one does not (tests/practice/displaced.test.ts). */
const COST = { crossedStart: 1, evenStart: 1.25, oddStart: 2, creep: 0.6, step: 2, jump: 6, away: 0.8 } as const;
/** What a stroke on the other accepted ending explains: less than one in its own place, or some patterns would look like their neighbours. */
const OTHER_ENDING = 0.5;

/** The lag of every cycle that the take covers, end to end; a last part shorter than half a cycle belongs to the cycle before. */
export function lagTrack(take: Take, played: readonly PlayedStroke[]): CycleLag[] {
  const cycle = take.music.performance.clave.cycleSteps * TICKS_PER_STEP;
  const windows = cycleWindows(take, cycle);
  const lags = lagsOf(cycle, mostOffsetTicks(take));
  const margin = cycle / 2 + TICKS_PER_STEP;
  const asked = expectedStrokes(take, take.fromPlayTick - margin, take.toPlayTick + margin).map(placesOf);
  const places = played.map(({ at }) => tickAt(take.tempo, at));
  const costs = windows.map(({ fromPlayTick, toPlayTick }) => {
    const inside = places.filter((place) => place >= fromPlayTick - QUARTER_STEP && place < toPlayTick - QUARTER_STEP);
    const around = asked.filter(([place = 0]) => place >= fromPlayTick - margin && place < toPlayTick + margin);
    const away = (lag: number) => (isHome(lag) ? (COST.away * Math.abs(lag)) / TICKS_PER_STEP : 0);
    return lags.map((lag) => away(lag) + unexplained(inside, around, fromPlayTick - lag, toPlayTick - lag, lag));
  });
  const path = cheapestTrack(costs, lags, cycle);
  const track = windows.map((window, index) => ({ ...window, lagTicks: lags[path[index] ?? 0] ?? 0 }));
  const inTake = asked.filter(([place = 0]) => place >= take.fromPlayTick && place < take.toPlayTick);
  return believed(take, track, lags, costs, inTake.length / windows.length);
}

type Places = readonly number[];
const placesOf = (stroke: ExpectedStroke): Places =>
  stroke.otherEnding === null ? [stroke.playTick] : [stroke.playTick, stroke.otherEnding];

function cycleWindows(take: Take, cycle: number): Omit<CycleLag, 'lagTicks'>[] {
  const length = take.toPlayTick - take.fromPlayTick;
  const count = Math.max(1, Math.round(length / cycle));
  return Array.from({ length: count }, (_, index) => ({
    fromPlayTick: take.fromPlayTick + index * cycle,
    toPlayTick: index === count - 1 ? take.toPlayTick : take.fromPlayTick + (index + 1) * cycle,
  }));
}

/** The largest offset looked for: half a step, or as much as an ordinary delay where a step is short. */
function mostOffsetTicks({ tempo, fromPlayTick }: Take): number {
  const delay = (LIMITS.offsetMostMs.value / 1000) * 16 * tempoAt(tempo, fromPlayTick);
  return Math.max(TICKS_PER_STEP / 2, Math.min(delay, MOST_OFFSET_STEPS * TICKS_PER_STEP));
}

/** Lags all round the cycle, half a step beyond half a cycle late so that crossed is one thing, the smallest first so that it wins a tie. */
function lagsOf(cycle: number, mostOffset: number): number[] {
  const lags: number[] = [];
  for (let lag = -(cycle - TICKS_PER_STEP) / 2 + QUARTER_STEP; lag <= (cycle + TICKS_PER_STEP) / 2; lag += QUARTER_STEP) lags.push(lag);
  return lags.filter((lag) => (isHome(lag) ? Math.abs(lag) <= mostOffset : true)).sort((a, b) => Math.abs(a) - Math.abs(b));
}

/** Whether a lag is an offset rather than a displacement. */
const isHome = (lag: number): boolean => Math.abs(lag) <= MOST_OFFSET_STEPS * TICKS_PER_STEP;

/** What a stroke explains that lies this far from one asked for, 0 to 1. */
const worthAt = (distance: number): number => Math.exp(-(Math.max(0, distance - FULL_TICKS) ** 2) / (2 * FALL_TICKS ** 2));

/** Strokes played and asked for that a lag leaves unexplained; `from` and `to` bound what is asked for. */
function unexplained(played: readonly number[], asked: readonly Places[], from: number, to: number, lag: number): number {
  const wanted = asked.filter(([place = 0]) => place >= from && place < to);
  let explained = 0;
  let first = 0;
  const near = asked.filter(([place = 0]) => place >= from - TICKS_PER_STEP && place < to + TICKS_PER_STEP);
  for (const place of played) {
    const at = place - lag;
    while (first < near.length && (near[first]?.[0] ?? 0) < at - 2 * TICKS_PER_STEP) first += 1;
    let best = 0;
    for (let index = first; index < near.length && (near[index]?.[0] ?? 0) <= at + 2 * TICKS_PER_STEP; index += 1)
      (near[index] ?? []).forEach((candidate, other) => {
        const weight = other === 0 ? 1 : OTHER_ENDING;
        best = Math.max(best, weight * worthAt(Math.abs(at - candidate)));
      });
    explained += best;
  }
  return Math.max(0, wanted.length + played.length - 2 * explained);
}

/** What it costs to begin with a lag: nothing near 0, little on the other side of the clave, more on the beats, most between them. */
function startCost(lag: number, cycle: number): number {
  const steps = Math.round(lag / TICKS_PER_STEP);
  if (isHome(lag)) return 0;
  if (steps * TICKS_PER_STEP * 2 === cycle) return COST.crossedStart;
  return steps % 2 === 0 ? COST.evenStart : COST.oddStart;
}

/** Index of the lag of each cycle on the cheapest path. */
function cheapestTrack(costs: readonly (readonly number[])[], lags: readonly number[], cycle: number): number[] {
  let totals = lags.map((lag, index) => (costs[0]?.[index] ?? 0) + startCost(lag, cycle));
  const from: number[][] = [];
  for (const row of costs.slice(1)) {
    const cheapest = totals.indexOf(Math.min(...totals));
    const back: number[] = [];
    totals = row.map((cost, index) => {
      let best = totals[index] ?? 0;
      let origin = index;
      const consider = (candidate: number, price: number) => {
        const total = (totals[candidate] ?? Number.POSITIVE_INFINITY) + price;
        if (total < best) [best, origin] = [total, candidate];
      };
      lags.forEach((lag, candidate) => {
        const steps = Math.abs(lag - (lags[index] ?? 0)) / TICKS_PER_STEP;
        if (steps > 0 && steps <= 1) consider(candidate, steps <= 0.5 ? COST.creep : COST.step);
      });
      consider(cheapest, COST.jump);
      back.push(origin);
      return best + cost;
    });
    from.push(back);
  }
  let at = totals.indexOf(Math.min(...totals));
  const path = [at];
  for (const back of from.toReversed()) {
    at = back[at] ?? at;
    path.unshift(at);
  }
  return path;
}
