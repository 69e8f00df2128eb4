import type { Form } from '../music/chart/chart';
import type { Performance } from '../performance/performance';
import type { Music } from './pipeline';
import type { Heard, Player } from './ports';
import type { Loop } from './settings';

/**
 * Open vamps: a section "on cue" goes round by itself until it is cued.
 *
 * While the form plays and the section is entered, the music is changed, from beat 4 of its last bar on, to the section going round:
 * from there on the bass and the anticipations lead back to its own first chord. A cue changes back at the same place, so that they
 * lead on. When that place of this round is past, the cue takes effect at the end of the next: "one more round".
 */

/** What an open vamp does: going round, about to be left, or about to be left after one more round. */
export type VampState = 'holding' | 'leaving' | 'one more round';

/** From here to the end of the last bar, strokes may lead to what follows: a quarter note. */
const LEADING_TICKS = 480;

/** Holds and leaves open vamps while the form plays. */
export interface VampKeeper {
  /** Called as the music goes by: enters and leaves vamps. */
  readonly follow: (heard: Heard, music: Music) => void;
  /** Asks to leave the vamp that goes round. */
  readonly cue: (heard: Heard | null, music: Music | null) => void;
  /** What to hand to the player when the music is changed: the vamp while one goes round, else the form. */
  readonly changed: (music: Music) => Performance;
  readonly state: () => VampState | null;
  readonly reset: () => void;
}

/** Keeps the vamps of one player. `vampOf` gives the section going round, `onChange` is told when the state changes. */
export function createVampKeeper(player: Player, vampOf: (music: Music, range: Loop) => Performance, onChange: () => void): VampKeeper {
  let range: Loop | null = null;
  let state: VampState | null = null;

  const become = (next: VampState | null, bars: Loop | null): void => {
    range = bars;
    if (state === next) return;
    state = next;
    onChange();
  };
  const seamOf = (form: Form, bars: Loop): number => {
    const last = form.bars[bars.toBar - 1];
    return last ? last.tick + last.ticks - LEADING_TICKS : 0;
  };

  return {
    follow(heard, music) {
      if (music.loop !== null || heard.countIn !== null) return;
      const { form } = music.whole;
      const here = openVampAt(form, heard.tick);
      if (!here) {
        if (state !== null) become(null, null);
        return;
      }
      if (state !== null || heard.performance !== music.performance) return;
      const seam = seamOf(form, here);
      if (player.changeAt(vampOf(music, here), seam, seam - heard.tick) !== null) become('holding', here);
    },
    cue(heard, music) {
      if (!heard || !music || range === null || state !== 'holding') return;
      const seam = seamOf(music.whole.form, range);
      if (player.changeAt(music.performance, seam, seam - heard.tick) !== null) become('leaving', range);
      else if (player.changeAt(music.performance, seam, Number.POSITIVE_INFINITY) !== null) become('one more round', range);
    },
    changed: (music) => (range !== null && state === 'holding' && music.loop === null ? vampOf(music, range) : music.performance),
    state: () => state,
    reset: () => become(null, null),
  };
}

/** The bars of the open section that a tick lies in, or null. A form that is one open section simply goes round. */
export function openVampAt(form: Form, tick: number): Loop | null {
  const visit = form.visits.find(({ fromBar, toBar, onCue }) => {
    const first = form.bars[fromBar];
    const last = form.bars[toBar - 1];
    return onCue && first && last && tick >= first.tick && tick < last.tick + last.ticks;
  });
  return visit && form.visits.length > 1 ? { fromBar: visit.fromBar, toBar: visit.toBar } : null;
}
