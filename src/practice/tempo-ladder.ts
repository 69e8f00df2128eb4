import { TEMPO_RANGE } from '../vocabulary';
import { PRACTICE } from './practice-limits';

/*
 * The tempo ladder: up a step after 3 clean passes of the last 4, down a step after 2 faulty ones in a row, now and then a short burst
 * at the goal, and the next day two steps below what was reached. A state and pure functions:
 *
 *   let ladder = startLadder({ from: 60, goal: 92 });
 *   ladder = afterPass(ladder, assessment.clean);   // → ladder.tempo is what to play next, ladder.change why
 *   if (ladder.burst) …play `PRACTICE.burstCycles` at ladder.goal, then ladder = afterBurst(ladder);
 *   ladder = onNextDay(ladder);                     // when the day has changed
 */

/** A tempo ladder as it stands. Tempi are whole half notes a minute. */
export interface TempoLadder {
  readonly tempo: number;
  readonly goal: number;
  /** Where it began: it never goes below the half of this. */
  readonly from: number;
  /** The last passes at this tempo, oldest first, at most four. */
  readonly recent: readonly boolean[];
  /** What the last pass led to. */
  readonly change: 'up' | 'down' | 'stay' | 'reached';
  /** Highest tempo at which three of four passes were clean, or null. */
  readonly best: number | null;
  /** True when a burst at the goal is due. */
  readonly burst: boolean;
  readonly sinceBurst: number;
}

/** A ladder at its foot. Tempi outside what the page plays are moved into it. */
export function startLadder({ from, goal }: { readonly from: number; readonly goal: number }): TempoLadder {
  const top = inRange(goal);
  const start = Math.min(inRange(from), top);
  return { tempo: start, goal: top, from: start, recent: [], change: 'stay', best: null, burst: false, sinceBurst: 0 };
}

/** Size of a step at a tempo. Example: `ladderStep(60)` is 2, `ladderStep(120)` is 4. */
export const ladderStep = (tempo: number): number => Math.max(PRACTICE.stepTempo.value, Math.round(PRACTICE.stepShare.value * tempo));

/** The ladder after a pass that was clean or not. */
export function afterPass(ladder: TempoLadder, clean: boolean): TempoLadder {
  const recent = [...ladder.recent, clean].slice(-PRACTICE.cleanOf.value);
  const sinceBurst = ladder.sinceBurst + 1;
  const burst = sinceBurst >= PRACTICE.burstEvery.value && ladder.tempo < ladder.goal && clean;
  const counted = { ...ladder, recent, sinceBurst, burst };
  if (recent.filter(Boolean).length >= PRACTICE.cleanNeeded.value) {
    const best = Math.max(ladder.best ?? 0, ladder.tempo);
    if (ladder.tempo >= ladder.goal) return { ...counted, best, change: 'reached', burst: false };
    return { ...counted, best, tempo: Math.min(ladder.goal, ladder.tempo + ladderStep(ladder.tempo)), recent: [], change: 'up' };
  }
  const faults = recent.slice(-PRACTICE.faultsDown.value);
  if (faults.length === PRACTICE.faultsDown.value && !faults.includes(true)) {
    const tempo = Math.max(lowest(ladder), ladder.tempo - ladderStep(ladder.tempo));
    return { ...counted, tempo, recent: [], change: tempo < ladder.tempo ? 'down' : 'stay', burst: false };
  }
  return { ...counted, change: 'stay' };
}

/** The ladder after a burst was played or passed over: a burst is never judged. */
export const afterBurst = (ladder: TempoLadder): TempoLadder => ({ ...ladder, burst: false, sinceBurst: 0 });

/** The ladder on another day: two steps below the best tempo reached (or below where it stands), nothing counted. */
export function onNextDay(ladder: TempoLadder): TempoLadder {
  let tempo = ladder.best ?? ladder.tempo;
  for (let step = 0; step < PRACTICE.stepsNextDay.value; step += 1) tempo -= ladderStep(tempo);
  return { ...ladder, tempo: Math.max(lowest(ladder), tempo), recent: [], change: 'stay', burst: false, sinceBurst: 0 };
}

const lowest = ({ from }: TempoLadder): number => Math.max(TEMPO_RANGE.from, Math.round(from / 2));
const inRange = (tempo: number): number => Math.round(Math.max(TEMPO_RANGE.from, Math.min(TEMPO_RANGE.to, tempo)));
