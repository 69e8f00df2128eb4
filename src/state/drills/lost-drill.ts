import { planSurprises, rearranged, type Surprise } from '../../practice/lost-and-found';
import type { Desk } from '../desk';
import type { Listening } from '../listening/listening';
import { WHOLE_BAND } from '../listening/listening-state';

/** Bars that a chart must have: below that there is no room for a surprise. */
export const SHORTEST_FORM = 16;
const ROUNDS = 2;

/** Lost and found with the chart on the desk; null when its form is too short. The same number makes the same surprises. */
export function playSurprises({ desk, run }: Pick<Desk, 'desk' | 'run'>, listening: Listening, seed: number): readonly Surprise[] | null {
  run({ kind: 'stop' });
  run({ kind: 'loop off' });
  const performance = desk.getState().music?.performance;
  const bars = performance?.bars.length ?? 0;
  if (!performance || bars < SHORTEST_FORM) return null;
  const plan = planSurprises({ bars, seed, rounds: ROUNDS });
  listening.setBand({ ...WHOLE_BAND, piano: 'mine' });
  listening.playMusic(rearranged(performance, plan.order));
  return plan.surprises;
}
