import { barsUntilBack, planSurprises, rearranged, type Surprise } from '../../practice/lost-and-found';
import type { Desk } from '../desk';
import { type Listening, type PassReport, WHOLE_BAND } from '../listening/listening-state';

/** Bars that a chart must have: below that there is no room for a surprise. */
const SHORTEST_FORM = 16;
const ROUNDS = 2;

/** Lost and found, once played: what the band does, and what became of the player. */
export interface LostDrill {
  readonly seed: number;
  readonly surprises: readonly Surprise[];
  /**
   * Bars until the player was back after each surprise that was listened to, in order; null where that never came. Empty when nothing
   * listened: then the player judges.
   */
  readonly found: () => readonly (number | null)[];
  /** Stops listening for it. */
  readonly leave: () => void;
}

/** Lost and found with the chart on the desk; null when its form is too short. The same number makes the same surprises. */
export function playSurprises({ desk, run }: Pick<Desk, 'desk' | 'run'>, listening: Listening, seed: number): LostDrill | null {
  run({ kind: 'stop' });
  run({ kind: 'loop off' });
  const performance = desk.getState().music?.performance;
  const bars = performance?.bars.length ?? 0;
  if (!performance || bars < SHORTEST_FORM) return null;
  const plan = planSurprises({ bars, seed, rounds: ROUNDS });
  const music = rearranged(performance, plan.order);
  const reports: PassReport[] = [];
  const leave = listening.store.subscribe((now, then) => {
    const { report } = now;
    if (report && report !== then.report && report.take.music.performance === music) reports.push(report);
  });
  listening.setBand({ ...WHOLE_BAND, piano: 'mine' });
  listening.playMusic(music);
  return {
    seed,
    surprises: plan.surprises,
    leave,
    found() {
      const heardTo = Math.max(0, ...reports.map(({ take }) => take.toPlayTick));
      const heard = { ...music, bars: music.bars.filter(({ tick, ticks }) => tick + ticks <= heardTo) };
      const strokes = reports.flatMap(({ matched }) => matched.strokes);
      const stretches = reports.flatMap(({ matched }) => matched.stretches);
      return plan.surprises
        .filter(({ atBar }) => atBar < heard.bars.length)
        .map(({ atBar }) => barsUntilBack({ strokes, stretches }, heard, atBar));
    },
  };
}
