import { barPlace } from './expected-strokes';
import type { StepPicture } from './finding';
import type { LabelledStroke } from './labelled';
import { meanOf, spreadOf } from './statistics';
import type { Take } from './take';

/** Strokes below which a mean says nothing about a step. */
const LEAST_FOR_MEAN = 3;

/** Every step of the clave cycle over the whole take: what was asked for, played, missed, and where it lay. */
export function stepPictures(take: Take, strokes: readonly LabelledStroke[]): StepPicture[] {
  const { cycleSteps } = take.music.performance.clave;
  const deviations = Array.from({ length: cycleSteps }, (): number[] => []);
  const counts = Array.from({ length: cycleSteps }, () => ({ asked: 0, played: 0, missed: 0, extra: 0 }));
  for (const { expected, deviationMs, label, playTick } of strokes) {
    const cycleStep = expected?.cycleStep ?? cycleStepOf(take, playTick);
    const count = counts[cycleStep];
    if (!count) continue;
    if (label === 'extra') count.extra += 1;
    else {
      count.asked += 1;
      if (label === 'missed') count.missed += 1;
      else count.played += 1;
    }
    if (deviationMs !== null) deviations[cycleStep]?.push(deviationMs);
  }
  return counts.map((count, cycleStep) => {
    const found = deviations[cycleStep] ?? [];
    const enough = found.length >= LEAST_FOR_MEAN;
    return { cycleStep, ...count, meanMs: enough ? meanOf(found) : null, spreadMs: enough ? spreadOf(found) : null };
  });
}

/** The step of the clave cycle nearest to a play tick. */
export const cycleStepOf = (take: Take, playTick: number): number => placeOf(take, playTick).cycleStep;

/** Bar and step nearest to a play tick of a take. */
export function placeOf({ music: { performance, startTick, fromPlay } }: Take, playTick: number) {
  const length = performance.toTick - performance.fromTick;
  const rounded = Math.round((playTick - fromPlay) / 240) * 240;
  const travelled = startTick - performance.fromTick + rounded;
  const tick = performance.closed ? ((travelled % length) + length) % length : Math.max(0, travelled);
  return barPlace(performance, performance.fromTick + tick);
}
