import type { Job } from '../../exchange/pack/job';
import type { OnProgress } from '../../exchange/pack/make-pack';
import type { SoundSet } from '../../exchange/wav/pcm';
import type { WavRate } from '../../exchange/wav/wav-header';
import type { PageDrawing } from '../../layout/sheet/page-drawing';
import type { Score } from '../../music/score';

/** Draws the sheet of a score (and its first cycles in the other direction) as pages. Rejects with a reason in words. */
export type DrawSheet = (score: Score, other: Score) => Promise<readonly PageDrawing[]>;

/** Does a job away from the page: its bytes as they come. Aborted, it ends at once and throws. */
export type MakeFiles = (
  job: Job,
  pages: (key: number) => Promise<readonly PageDrawing[]>,
  onProgress: OnProgress,
  signal: AbortSignal,
) => AsyncGenerator<Uint8Array<ArrayBuffer>, void, undefined>;

/** A file that is being written. Until `close` has come back there is no file. */
export interface OpenFile {
  /** Takes the next bytes; rejects when the disk refuses. */
  write(bytes: Uint8Array<ArrayBuffer>): Promise<void>;
  /** Ends the file; only now it is there. */
  close(): Promise<void>;
  /** Lets go of it: nothing remains. */
  abort(): Promise<void>;
}

/** What take-along asks of the device. */
export interface TakeAlongPorts {
  readonly make: MakeFiles;
  readonly draw: DrawSheet;
  /** Opens a file for writing. A large one is asked a place for, inside a gesture; null when the person thought better of it. */
  readonly openFile: (name: string, type: string, large: boolean) => Promise<OpenFile | null>;
  /** The recordings decoded to `rate`; rejects with a reason in words. */
  readonly sounds: (rate: WavRate) => Promise<SoundSet>;
  /** The font files of the sheet. */
  readonly fonts: () => Promise<Job['fonts']>;
  /** Milliseconds since 1970. */
  readonly now: () => number;
}
