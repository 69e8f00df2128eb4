import type { PartName, Performance } from '../../performance/performance';
import type { ProgrammeSound } from '../../performance/programme';
import { firstPlayTick, lastPlayTick, soundsIn, startProgramme } from '../../performance/programme';
import { secondsOf } from '../../performance/tempo';
import { assert, type HalfNotesPerMinute } from '../../vocabulary';
import type { WavRate } from './wav-header';

/** What goes into a WAV file. */
export interface WavOptions {
  readonly rate: WavRate;
  readonly tempo: HalfNotesPerMinute;
  /** Level of each part, 0 (left out) to 1, as in the mix that is heard. */
  readonly levels: Readonly<Record<PartName, number>>;
  /** Cents above A = 440. */
  readonly tuningCents?: number;
  /** Bars of clave before the music. */
  readonly countInBars: 0 | 1 | 2;
  /** Times through; music that does not go round is played once. */
  readonly passes: number;
  /**
   * `loop`: the file ends with the last bar, to the frame; without a count-in what still rings then sounds at its start, so that it
   * can go round without a seam. A number: so many seconds are added in which the last notes ring out.
   */
  readonly end: 'loop' | number;
  /** Adds noise of one step of the 16 bits (triangular), so that fading notes do not end in steps; left out when missing. */
  readonly dither?: boolean;
}

/** A sound of the plan. */
export interface PlannedSound extends Pick<ProgrammeSound, 'event' | 'countIn'> {
  /** Frame of the file on which it begins. */
  readonly frame: number;
  readonly seconds: number;
}

/** Everything that starts in a file, and its length. */
export interface WavPlan {
  /** Ascending by frame. */
  readonly sounds: readonly PlannedSound[];
  /** Length of the file in frames. */
  readonly frames: number;
  /** Frames that what rings over the end is heard again at the start after, or null when it rings on or is cut. */
  readonly foldedAfter: number | null;
}

/**
 * Lays out a file: the same sounds at the same moments as the player's, each on the frame nearest to its tick. A file that loops
 * is one of the later passes, as a loop is heard once it goes round. Throws on no passes.
 */
export function planWav(performance: Performance, options: WavOptions): WavPlan {
  const { rate, tempo, countInBars, end, passes } = options;
  assert(passes >= 1, `a file holds at least one pass, got ${passes}`);
  const programme = startProgramme(performance, performance.fromTick, countInBars);
  const length = performance.toTick - performance.fromTick;
  const folded = end === 'loop' && countInBars === 0 && performance.closed;
  const from = folded ? length : firstPlayTick(programme);
  const to = lastPlayTick(programme) ?? (folded ? length : 0) + length * passes;
  const frameOf = (playTick: number): number => Math.round(secondsOf(playTick - from, tempo) * rate);
  const music = frameOf(to);
  const sounds = soundsIn(programme, from, to).map(({ event, countIn, playTick }) => ({
    event,
    countIn,
    frame: frameOf(playTick),
    seconds: secondsOf(event.soundingTicks, tempo),
  }));
  return { sounds, frames: music + (end === 'loop' ? 0 : Math.round(end * rate)), foldedAfter: folded ? music : null };
}
