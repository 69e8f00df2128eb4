import { secondsAt, tickAt } from '../performance/tempo';
import { TICKS_PER_STEP } from '../vocabulary';
import { type CycleLag, displacedSteps } from './displacement';
import type { ExpectedStroke, PlayedStroke, Stretch } from './labelled';
import { medianOf } from './statistics';
import type { Take } from './take';

/** The lag of the whole is taken as constant while no cycle is further from it than this, in seconds of a step's share. */
const STEADY_SHARE = 0.3;
/** Nearest strokes further apart than this share of a step say nothing about the lag. */
const NEAR_SHARE = 0.5;

/**
 * Where strokes of a stretch are looked for: the lag in seconds as a function of the moment. One constant where the player kept a
 * constant lag; a line from cycle to cycle where they drifted. It only guides the pairing; deviations are not measured from it.
 */
export function guideLag(
  take: Take,
  stretch: Stretch,
  asked: readonly ExpectedStroke[],
  strokes: readonly PlayedStroke[],
  track: readonly CycleLag[],
): (at: number) => number {
  const cycles = track.filter(({ fromPlayTick }) => fromPlayTick >= stretch.fromPlayTick && fromPlayTick < stretch.toPlayTick);
  const points = cycles.map((cycle) => refined(take, cycle, asked, strokes));
  const middle = medianOf(points.map(({ lag }) => lag)) ?? 0;
  const stepSeconds = (asked[0]?.stepMs ?? 200) / 1000;
  if (points.every(({ lag }) => Math.abs(lag - middle) <= STEADY_SHARE * stepSeconds)) {
    const all = points.flatMap(({ residuals }) => residuals);
    const lag = medianOf(all) ?? middle;
    return () => lag;
  }
  return (at) => between(points, at);
}

interface LagPoint {
  readonly at: number;
  readonly lag: number;
  readonly residuals: readonly number[];
}

/** The lag of one cycle by the median of its strokes' distances from the nearest strokes asked for. */
function refined(take: Take, cycle: CycleLag, asked: readonly ExpectedStroke[], strokes: readonly PlayedStroke[]): LagPoint {
  const { fromPlayTick, toPlayTick } = cycle;
  const restTicks = cycle.lagTicks - displacedSteps(take, cycle) * TICKS_PER_STEP;
  const rest = secondsAt(take.tempo, fromPlayTick + restTicks) - secondsAt(take.tempo, fromPlayTick);
  const near = asked.filter(({ playTick }) => playTick >= fromPlayTick - TICKS_PER_STEP && playTick <= toPlayTick + TICKS_PER_STEP);
  const residuals = strokes.flatMap(({ at }) => {
    const place = tickAt(take.tempo, at);
    if (place < fromPlayTick || place >= toPlayTick) return [];
    const distances = near.map((stroke) => at - rest - stroke.at);
    const nearest = distances.reduce((best, value) => (Math.abs(value) < Math.abs(best) ? value : best), Number.POSITIVE_INFINITY);
    return Math.abs(nearest) <= (NEAR_SHARE * (near[0]?.stepMs ?? 0)) / 1000 ? [nearest + rest] : [];
  });
  const at = secondsAt(take.tempo, (fromPlayTick + toPlayTick) / 2);
  return { at, lag: residuals.length < 3 ? rest : (medianOf(residuals) ?? rest), residuals };
}

function between(points: readonly LagPoint[], at: number): number {
  const after = points.findIndex((point) => point.at >= at);
  const next = points[after];
  const before = after === -1 ? points.at(-1) : points[after - 1];
  if (!before) return next?.lag ?? 0;
  if (!next || next.at === before.at) return before.lag;
  return before.lag + ((next.lag - before.lag) * (at - before.at)) / (next.at - before.at);
}
