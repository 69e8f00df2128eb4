import { madeBank } from '../../performance/sounds/recordings';
import type { InstrumentName } from '../../performance/sounds/sample-set';
import type { BankSound } from '../../performance/sounds/sound-bank';

/** One channel of sound in memory: frames from −1 to 1, and frames a second. */
export interface Pcm {
  readonly frames: Float32Array;
  readonly rate: number;
}

/** The sounds of every instrument, decoded. */
export type SoundSet = Readonly<Record<InstrumentName, readonly BankSound<Pcm>[]>>;

/** Frames as `Pcm`. */
export const pcmOf = (frames: Float32Array, rate: number): Pcm => ({ frames, rate });

/** Every instrument made by rule: what a file is mixed from where there are no recordings. */
export const madeSounds = (): SoundSet => ({
  piano: madeBank('piano', pcmOf),
  bass: madeBank('bass', pcmOf),
  drums: madeBank('drums', pcmOf),
});
