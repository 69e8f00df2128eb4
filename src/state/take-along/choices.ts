import { PACK_KINDS, type PackKind } from '../../exchange/pack/pack-order';
import { PLAY_ALONGS, type PlayAlong, type PlayAlongForm } from '../../exchange/wav/play-along';
import type { WavRate } from '../../exchange/wav/wav-header';
import type { Feel } from '../../performance/feel';

/** The files on offer. */
export const FILE_KINDS = ['sheet', 'midi', 'musicxml', 'mxl', 'wav', 'pack'] as const;
export type FileKind = (typeof FILE_KINDS)[number];

/** Kinds of file in a pack, and who plays in a play-along, in the order they are offered. */
export const PACK_FILE_KINDS: readonly PackKind[] = PACK_KINDS;
export const PLAY_ALONG_KINDS: readonly PlayAlong[] = PLAY_ALONGS;

/** Which of the two tempi of the desk. */
export const WHICH_TEMPO = ['now', 'goal'] as const;
export type WhichTempo = (typeof WHICH_TEMPO)[number];

/** Frames a second on offer. */
export const WAV_RATES = [44_100, 48_000] as const satisfies readonly WavRate[];
/** How a play-along may go. */
export const FORMS = ['loop', 'once'] as const satisfies readonly PlayAlongForm[];
/** Semitones from the desk's key that a pack offers: all twelve keys, the nearest way. */
export const PACK_STEPS = [0, 1, 2, 3, 4, 5, 6, -5, -4, -3, -2, -1] as const;

/** What the player chose in the panel. */
export interface Choices {
  readonly feel: Feel['name'];
  /** The play-along as a single file. */
  readonly parts: PlayAlong;
  readonly form: PlayAlongForm;
  readonly tempo: WhichTempo;
  readonly rate: WavRate;
  /** The pack: semitones from the desk's key, tempi, kinds of file, play-alongs. */
  readonly keys: readonly number[];
  readonly tempi: readonly WhichTempo[];
  readonly kinds: readonly PackKind[];
  readonly playAlongs: readonly PlayAlong[];
}

/** What the panel begins with: the goal's tempo, this key, everything in it. */
export const FIRST_CHOICES: Choices = {
  feel: 'straight',
  parts: 'without-piano',
  form: 'loop',
  tempo: 'goal',
  rate: 44_100,
  keys: [0],
  tempi: ['goal'],
  kinds: PACK_KINDS,
  playAlongs: PLAY_ALONGS,
};

/** `list` with `item` added or taken away, in the order of `all`. */
export function toggled<Item>(all: readonly Item[], list: readonly Item[], item: Item): Item[] {
  return all.filter((candidate) => (candidate === item ? !list.includes(item) : list.includes(candidate)));
}
