import type { TempoMap } from '../performance/tempo';
import { secondsOf, tempoAt, tickAt } from '../performance/tempo';
import { TICKS_PER_STEP } from '../vocabulary';
import type { PlayedStroke } from './labelled';
import type { TakenNote } from './take';
import { gatherMs } from './timing-limits';

/** Notes gathered into strokes: all that follow the first within the gathering time belong together. `notes` ascending; so is the result. */
export function gatherStrokes(notes: readonly TakenNote[], tempo: TempoMap): PlayedStroke[] {
  const groups: TakenNote[][] = [];
  let until = Number.NEGATIVE_INFINITY;
  for (const note of notes) {
    const group = groups.at(-1);
    if (group && note.at <= until) group.push(note);
    else {
      groups.push([note]);
      until = note.at + gatherMs(stepMsAt(tempo, tickAt(tempo, note.at))) / 1000;
    }
  }
  return groups.map(strokeOf);
}

/** Notes that were struck together, as one stroke; its moment is that of the highest note. Notes ascending, at least one. */
export function strokeOf(notes: readonly TakenNote[]): PlayedStroke {
  const outer = notes.reduce((best, note) => ((note.midi ?? 0) > (best.midi ?? 0) ? note : best));
  return { at: outer.at, notes };
}

/** Length of a step at a play tick, in milliseconds. */
export const stepMsAt = (tempo: TempoMap, playTick: number): number => 1000 * secondsOf(TICKS_PER_STEP, tempoAt(tempo, playTick));
