import { styleOf } from '../music/styles/styles';
import { TICKS_PER_STEP } from '../vocabulary';
import { sideOfStep } from './expected-strokes';
import { findDrift } from './find-drift';
import type { Finding, StepPicture } from './finding';
import type { LabelledStroke, Matched } from './labelled';
import { loopAround, loopOfHabit, worstBar } from './repair-loop';
import { meanOf, medianOf, spreadOf, withoutOutliers } from './statistics';
import type { Take } from './take';
import { LIMITS } from './timing-limits';

/*
 * Habits of timing. Each is said only when it is larger than its limit and three standard errors away from nothing, so that a few
 * strokes accuse nobody. Early offbeats are how this music is played, and are no finding.
 */

/** Strokes below which no habit is spoken of. */
export const LEAST_FOR_TIMING = 12;
const ERRORS = 3;

/** Rushing or dragging, swung eighths, a step that is off, uneven strokes and, on a calibrated device, a constant offset. */
export function findTiming(take: Take, matched: Matched, steps: readonly StepPicture[]): Finding[] {
  const struck = matched.strokes.filter(({ deviationMs, expected }) => deviationMs !== null && expected !== null);
  if (take.timing === 'coarse' || take.timing === 'off' || struck.length < LEAST_FOR_TIMING) return [];
  const stepMs = medianOf(struck.map(({ expected }) => expected?.stepMs ?? 0)) ?? 0;
  const drift = findDrift(take, struck, stepMs);
  const swing = findSwing(take, struck, stepMs);
  return [
    ...drift,
    ...(isMeantToSwing(take, struck) ? [] : swing),
    ...(swing.length > 0 ? [] : findStepOff(take, steps, stepMs)),
    ...(drift.length > 0 || swing.length > 0 ? [] : findUneven(take, struck, stepMs)),
    // What drifts or swings does not lie evenly behind: the same thing is not said twice.
    ...(drift.length > 0 || swing.length > 0 ? [] : findOffset(take, matched, struck)),
  ];
}

function findSwing(take: Take, struck: readonly LabelledStroke[], stepMs: number): Finding[] {
  if (take.music.performance.clave.cycleSteps !== 16) return [];
  const of = (odd: number) =>
    withoutOutliers(struck.filter(({ expected }) => (expected?.step ?? 0) % 2 === odd).map(({ deviationMs }) => deviationMs ?? 0));
  const [beats, offbeats] = [of(0), of(1)];
  if (beats.length < 4 || offbeats.length < 4) return [];
  const late = (meanOf(offbeats) ?? 0) - (meanOf(beats) ?? 0);
  const error = Math.hypot((spreadOf(beats) ?? 0) / Math.sqrt(beats.length), (spreadOf(offbeats) ?? 0) / Math.sqrt(offbeats.length));
  if (late < Math.max(LIMITS.swung.value * stepMs, LIMITS.swungLeastMs.value) || late < ERRORS * error) return [];
  return [{ facts: { kind: 'swung', shareOfStep: late / stepMs }, weight: 0.6, loop: loopOfHabit(take.music.performance) }];
}

/** True when most of what was struck lies in bars of a style that swings: late offbeats are then how it goes. */
function isMeantToSwing({ score }: Take, struck: readonly LabelledStroke[]): boolean {
  const swinging = struck.filter(({ expected }) => styleOf(score?.styles[expected?.bar ?? 0] ?? '').swings);
  return swinging.length > struck.length / 2;
}

function findStepOff(take: Take, steps: readonly StepPicture[], stepMs: number): Finding[] {
  const { performance } = take.music;
  const least = Math.max(LIMITS.stepOffShare.value * stepMs, LIMITS.stepOffLeastMs.value);
  const off = steps.filter(({ meanMs, spreadMs, played }) => {
    if (meanMs === null || spreadMs === null) return false;
    return Math.abs(meanMs) >= least && Math.abs(meanMs) >= (ERRORS * spreadMs) / Math.sqrt(played);
  });
  const worst = [...off].sort((a, b) => Math.abs(b.meanMs ?? 0) - Math.abs(a.meanMs ?? 0))[0];
  if (!worst || worst.meanMs === null) return [];
  const { cycleStep, meanMs } = worst;
  const bar = performance.bars.findIndex((candidate) => {
    const first = (cycleStep - candidate.cycleStep + performance.clave.cycleSteps) % performance.clave.cycleSteps;
    return first * TICKS_PER_STEP < candidate.ticks;
  });
  const within =
    (cycleStep - (performance.bars[Math.max(0, bar)]?.cycleStep ?? 0) + performance.clave.cycleSteps) % performance.clave.cycleSteps;
  const facts = { kind: 'step off', cycleStep, step: within, side: sideOfStep(performance, cycleStep), meanMs } as const;
  return [{ facts, weight: 0.42, loop: loopAround(performance, Math.max(0, bar)) }];
}

function findUneven(take: Take, struck: readonly LabelledStroke[], stepMs: number): Finding[] {
  const kept = withoutOutliers(struck.map(({ deviationMs }) => deviationMs ?? 0));
  const spreadMs = spreadOf(kept) ?? 0;
  if (spreadMs < Math.max(LIMITS.unevenShare.value * stepMs, LIMITS.unevenLeastMs.value)) return [];
  const far = struck.filter(({ deviationMs }) => Math.abs(deviationMs ?? 0) > 1.5 * spreadMs);
  const loop = far.length > 0 ? loopAround(take.music.performance, worstBar(far)) : loopOfHabit(take.music.performance);
  return [{ facts: { kind: 'uneven', spreadMs, stepMs }, weight: Math.min(0.75, 0.3 + spreadMs / stepMs), loop }];
}

function findOffset(take: Take, { offsetMs }: Matched, struck: readonly LabelledStroke[]): Finding[] {
  if (take.timing !== 'calibrated' || Math.abs(offsetMs) < LIMITS.offsetMs.value || struck.length < LEAST_FOR_TIMING) return [];
  return [{ facts: { kind: 'offset', ms: offsetMs }, weight: 0.38, loop: loopOfHabit(take.music.performance) }];
}
