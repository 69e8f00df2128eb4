import type { Performance } from '../performance/performance';
import { tickAt } from '../performance/tempo';
import { TICKS_PER_STEP } from '../vocabulary';
import type { CycleLag } from './displacement';
import { barPlace, isRumba, sideOfStep } from './expected-strokes';
import type { ExpectedStroke, Matched, PlayedStroke } from './labelled';
import type { Take } from './take';

/*
 * Son and rumba clave differ in one stroke: the last of the 3-side falls on 4 or on the & of 4. Who claps the other clave makes one
 * mistake, not two in every cycle.
 */

/** Share of the 3-sides that must agree before a clave is named, and how many must be heard. */
const AGREED = 0.75;
const LEAST_HEARD = 2;

/** Which clave was clapped, by the last stroke of its 3-sides; null when that cannot be told, and in 6/8. */
export function clapsOfThreeSide(take: Take, played: readonly PlayedStroke[], track: readonly CycleLag[]): Matched['claveHeard'] {
  const { performance, fromPlay } = take.music;
  if (performance.clave.cycleSteps !== 16) return null;
  const votes = { son: 0, rumba: 0 };
  for (const { fromPlayTick, toPlayTick, lagTicks } of track)
    for (const { at } of played) {
      const place = tickAt(take.tempo, at);
      if (place < fromPlayTick || place >= toPlayTick) continue;
      const unlagged = place - lagTicks;
      const { cycleStep } = barPlace(performance, scoreTick(take, Math.round(unlagged / TICKS_PER_STEP) * TICKS_PER_STEP - fromPlay));
      if (sideOfStep(performance, cycleStep) !== 3) continue;
      if (cycleStep % 8 === 6) votes.son += 1;
      if (cycleStep % 8 === 7) votes.rumba += 1;
    }
  const total = votes.son + votes.rumba;
  if (total < LEAST_HEARD) return null;
  if (votes.son >= AGREED * total) return 'son';
  return votes.rumba >= AGREED * total ? 'rumba' : null;
}

function scoreTick({ music: { performance, startTick } }: Take, playTick: number): number {
  const length = performance.toTick - performance.fromTick;
  const travelled = startTick - performance.fromTick + playTick;
  return performance.fromTick + (performance.closed ? ((travelled % length) + length) % length : Math.max(0, travelled));
}

/** Strokes of the clave asked for, with the last of the 3-side also accepted where the other clave has it, when that one was heard. */
export function withEndingOf(
  asked: readonly ExpectedStroke[],
  heard: Matched['claveHeard'],
  performance: Performance,
  displacedSteps: number,
): readonly ExpectedStroke[] {
  const wanted = isRumba(performance) ? 'rumba' : 'son';
  if (heard === null || heard === wanted) return asked;
  const from = wanted === 'son' ? 6 : 7;
  return asked.map((stroke) => {
    const patternStep = (((stroke.cycleStep - displacedSteps) % 16) + 16) % 16;
    const last = patternStep % 8 === from && sideOfStep(performance, patternStep) === 3;
    return last ? { ...stroke, otherEnding: stroke.playTick + (wanted === 'son' ? TICKS_PER_STEP : -TICKS_PER_STEP) } : stroke;
  });
}
