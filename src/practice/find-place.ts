import { TICKS_PER_STEP } from '../vocabulary';
import { isRumba } from './expected-strokes';
import type { Finding } from './finding';
import type { LabelledStroke, Matched } from './labelled';
import { loopAround } from './repair-loop';
import { placeOf } from './step-pictures';
import type { Take } from './take';

/** Strokes missed at the end of a take that count as having stopped: a cycle's worth, and at least this many. */
const LEAST_STOPPED = 5;

/** What is wrong with the place of the whole: crossed, displaced, the other clave, stopped or silent. Said once each. */
export function findPlace(take: Take, { strokes, stretches, claveHeard }: Matched): Finding[] {
  const { performance } = take.music;
  if (strokes.every(({ label }) => label === 'missed')) return [{ facts: { kind: 'silent' }, weight: 1, loop: loopAround(performance, 0) }];
  const found: Finding[] = [];
  const displaced = stretches.filter(({ displacedSteps }) => displacedSteps !== 0);
  const worst = displaced.find(({ crossed }) => crossed) ?? displaced[0];
  if (worst) {
    const { bar } = placeOf(take, worst.fromPlayTick);
    const fromStart = worst.fromPlayTick === take.fromPlayTick;
    const facts = worst.crossed
      ? ({ kind: 'crossed', fromStart, bar } as const)
      : ({ kind: 'displaced', steps: worst.displacedSteps, fromStart, bar } as const);
    found.push({ facts, weight: worst.crossed ? 1 : 0.96, loop: loopAround(performance, bar, fromStart ? 0 : 1) });
  }
  const asked = isRumba(performance) ? 'rumba' : 'son';
  if (claveHeard !== null && claveHeard !== asked)
    found.push({ facts: { kind: 'other clave', heard: claveHeard, asked }, weight: 0.94, loop: loopAround(performance, 0) });
  const stop = stoppedAt(take, strokes);
  const at = stop === null ? undefined : strokes.filter(({ expected }) => expected !== null)[stop];
  if (at?.expected) {
    const { bar } = at.expected;
    found.push({ facts: { kind: 'stopped', bar }, weight: 0.7, loop: loopAround(performance, bar, 1) });
  }
  return found;
}

/** Index, among the strokes asked for, from which nothing was played any more, for at least a cycle; null when it went on. */
export function stoppedAt(take: Take, strokes: readonly LabelledStroke[]): number | null {
  const asked = strokes.filter(({ expected }) => expected !== null);
  const last = asked.findLastIndex(({ label }) => label !== 'missed');
  const first = asked[last + 1];
  const cycle = take.music.performance.clave.cycleSteps * TICKS_PER_STEP;
  const stopped = first && asked.length - last - 1 >= LEAST_STOPPED && take.toPlayTick - first.playTick >= cycle - TICKS_PER_STEP;
  return stopped ? last + 1 : null;
}
