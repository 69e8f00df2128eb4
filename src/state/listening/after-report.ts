import type { StoreApi } from 'zustand/vanilla';
import { PRACTICE } from '../../practice/practice-limits';
import { fullBarTicks } from '../../vocabulary';
import type { Desk } from '../desk';
import { barAt } from '../loop';
import { heldTempo } from '../tap-tempo';
import type { Aside } from './aside';
import type { Listening, ListeningState } from './listening-state';
import { playedFigure } from './played-figure';
import { claveMet, replayOf } from './replay';

/** What a report leads to: its bars again, slower, the take heard again, its rhythm as a figure. */
export type AfterReport = Pick<Listening, 'loopOf' | 'slowerThan' | 'playLoop' | 'replay' | 'readFigure'>;

/** Acts on the report that stands in `store`. */
export function createAfterReport(store: StoreApi<ListeningState>, desk: Pick<Desk, 'desk' | 'run'>, aside: Aside): AfterReport {
  const report = () => store.getState().report;

  const loopOf: AfterReport['loopOf'] = (bars) => {
    const { music } = desk.desk.getState();
    const played = report()?.take.music.performance;
    if (!music || !played) return null;
    const tickOf = (bar: number): number => played.bars[bar]?.tick ?? played.fromTick;
    const form = music.score.form.bars;
    return { fromBar: barAt(form, tickOf(bars.fromBar)), toBar: barAt(form, tickOf(bars.toBar - 1)) + 1 };
  };

  return {
    loopOf,
    slowerThan(tempo) {
      const slower = heldTempo(tempo * PRACTICE.slowerShare.value);
      return slower < tempo ? slower : null;
    },
    playLoop(bars, tempo) {
      const loop = loopOf(bars);
      if (!loop) return;
      desk.run({ kind: 'loop bars', loop });
      if (tempo !== undefined) desk.run({ kind: 'set', settings: { tempo } });
      desk.run({ kind: 'play' });
    },
    replay(withWhat, shiftBars) {
      const take = report()?.take;
      if (!take) return;
      const bar = take.music.performance.bars[0]?.ticks ?? fullBarTicks('4/4');
      desk.run({ kind: 'stop' });
      const music = replayOf(take, withWhat, shiftBars * bar);
      const claveStrokes = music.events.filter(({ part }) => part === 'clave').length;
      store.setState({ replaying: { side: shiftBars ? 'other' : 'as played', met: claveMet(music), claveStrokes } });
      aside.play(music);
    },
    readFigure() {
      const take = report()?.take;
      return take ? playedFigure(take, desk.desk.getState().settings.direction) : null;
    },
  };
}
