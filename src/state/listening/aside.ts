import type { Ensemble } from '../../performance/ensemble';
import type { Performance } from '../../performance/performance';
import type { Desk } from '../desk';
import type { Player } from '../ports';
import { mixOf } from '../settings';
import { ensembleOf, WHOLE_BAND } from './listening-state';
import type { SoundingMusic } from './ports';

/** Looks that music may take to start. */
const PATIENCE = 25;

/** Music that sounds once beside the chart: clicks to tap along with, or a take again. */
export interface Aside {
  play(performance: Performance): void;
  /** Call it a few times a second with what sounds; the sound may need a moment to start. */
  look(music: SoundingMusic | null): 'going on' | 'over';
  /** Gives the player back to the band. */
  end(): void;
}

/** Nothing sounds; `ensemble` is what the band leaves out once it has the player back. */
export function createAside(desk: Pick<Desk, 'desk'>, player: () => Player | null, ensemble: () => Ensemble): Aside {
  let sounds = false;
  let looks = 0;
  const mix = () => {
    const { settings, preferences } = desk.desk.getState();
    return mixOf(settings, preferences);
  };
  return {
    play(performance) {
      const device = player();
      if (!device) return;
      const usual = mix();
      const open = { level: 0.8, muted: false };
      const parts = { 'piano right': open, pulse: open, percussion: open, clave: { ...usual.parts.clave, muted: false } };
      device.setMix({ ...usual, parts: { ...usual.parts, ...parts } });
      sounds = false;
      looks = 0;
      device.setEnsemble(ensembleOf(WHOLE_BAND));
      device.play({ performance, fromTick: performance.fromTick, tempo: performance.tempo, countInBars: 0 });
    },
    look(music) {
      if (music) {
        sounds = true;
        return 'going on';
      }
      looks += 1;
      return sounds || looks > PATIENCE ? 'over' : 'going on';
    },
    end() {
      player()?.setMix(mix());
      player()?.setEnsemble(ensemble());
    },
  };
}
