import type { LabelledStroke } from './labelled';
import { PRACTICE } from './practice-limits';
import { meanOf } from './statistics';

/*
 * The gap: the band plays N bars and is silent for M; the player goes on, and the drift at the re-entry is told in milliseconds and as
 * a share of the beat. Small drift makes the gap longer (1, 2, 4, 8), large drift shorter.
 *
 *   let drill = startGap({ onBars: 2 });
 *   bandPlays(drill, bar)                              // for every bar from the start of the drill
 *   const drifts = driftsOf(drill, matched.strokes, { barTicks: 1920, fromPlayTick: 0 });
 *   drill = afterGap(drill, worstDrift(drifts));
 */

/** The drill as it stands. */
export interface GapDrill {
  readonly onBars: number;
  readonly offBars: number;
  readonly longestMended: number;
}

/** Drift over one gap. */
export interface GapDrift {
  /** Bar of the drill in which the band comes back. */
  readonly reentryBar: number;
  /** Positive: behind the band. */
  readonly driftMs: number;
  /** The same as a share of the beat, a half note. */
  readonly ofBeat: number;
}

/** The drill with the shortest gap. */
export const startGap = ({
  onBars,
  offBars = PRACTICE.shortestGap.value,
}: {
  readonly onBars: number;
  readonly offBars?: number;
}): GapDrill => ({
  onBars: Math.max(1, Math.round(onBars)),
  offBars: Math.max(PRACTICE.shortestGap.value, Math.min(PRACTICE.longestGap.value, Math.round(offBars))),
  longestMended: 0,
});

/** Whether the band sounds in a bar, counted from the start of the drill. */
export const bandPlays = ({ onBars, offBars }: GapDrill, bar: number): boolean => bar % (onBars + offBars) < onBars;

/**
 * The drift over every gap that the strokes cover: their mean place in the last bar of the gap less that in the bar before it. Gaps
 * with no stroke in either bar are left out.
 */
export function driftsOf(
  drill: GapDrill,
  strokes: readonly LabelledStroke[],
  { barTicks, fromPlayTick }: { readonly barTicks: number; readonly fromPlayTick: number },
): GapDrift[] {
  const inBar = (bar: number) => {
    const found = strokes.filter(({ playTick }) => Math.floor((playTick - fromPlayTick) / barTicks) === bar);
    return found.filter(({ deviationMs, expected }) => deviationMs !== null && expected !== null);
  };
  const last = strokes.reduce((most, { playTick }) => Math.max(most, Math.floor((playTick - fromPlayTick) / barTicks)), -1);
  const drifts: GapDrift[] = [];
  const round = drill.onBars + drill.offBars;
  for (let reentryBar = round; reentryBar - 1 <= last; reentryBar += round) {
    const before = meanOf(inBar(reentryBar - drill.offBars - 1).map(({ deviationMs }) => deviationMs ?? 0));
    const end = inBar(reentryBar - 1);
    const after = meanOf(end.map(({ deviationMs }) => deviationMs ?? 0));
    const stepMs = end[0]?.expected?.stepMs;
    if (before === null || after === null || stepMs === undefined) continue;
    drifts.push({ reentryBar, driftMs: after - before, ofBeat: (after - before) / (4 * stepMs) });
  }
  return drifts;
}

/** The drift that counts when a pass had several gaps: the largest, whichever way it went; null when none could be measured. */
export const worstDrift = (drifts: readonly GapDrift[]): GapDrift | null =>
  drifts.reduce<GapDrift | null>((worst, drift) => (worst && Math.abs(worst.ofBeat) >= Math.abs(drift.ofBeat) ? worst : drift), null);

/** Whether a drift is too small to be called one. */
export const isSmallDrift = ({ ofBeat }: GapDrift): boolean => Math.abs(ofBeat) <= PRACTICE.driftSmall.value;

/** The drill after a gap: twice as long after a small drift, half as long after a large one or when the place was lost (null). */
export function afterGap(drill: GapDrill, drift: GapDrift | null | undefined): GapDrill {
  const size = drift ? Math.abs(drift.ofBeat) : Number.POSITIVE_INFINITY;
  if (drift && isSmallDrift(drift)) {
    const longestMended = Math.max(drill.longestMended, drill.offBars);
    return { ...drill, longestMended, offBars: Math.min(PRACTICE.longestGap.value, drill.offBars * 2) };
  }
  if (size <= PRACTICE.driftLarge.value) return drill;
  return { ...drill, offBars: Math.max(PRACTICE.shortestGap.value, Math.floor(drill.offBars / 2)) };
}
