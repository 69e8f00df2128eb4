import type { SoundSet } from '../exchange/wav/pcm';
import type { Result } from '../vocabulary';
import type { SheetPrinter } from './sheet-printer';

/** What a run of the command line leaves: exit code, standard output, standard error. */
export interface Outcome {
  /** 0 done · 1 the chart has faults · 2 bad use, or not there yet. */
  readonly code: 0 | 1 | 2;
  readonly out: string;
  readonly err: string;
  /** Work that must be waited for (a browser, a decoder); when there, its outcome takes the place of this one. */
  readonly rest?: () => Promise<Outcome>;
}

/** The world a command touches; `run` takes it as an argument, so that tests need no files. */
export interface World {
  /** Text of a file, or of standard input for `-`; a failure is one line. */
  readText(path: string): Result<string, string>;
  /** Bytes of a file, or of standard input for `-`; a failure is one line. */
  readBytes(path: string): Result<Uint8Array, string>;
  /** Writes a file; a failure is one line. */
  writeBytes(path: string, bytes: Uint8Array): Result<null, string>;
  /** The day, as `2026-11-25`. */
  today(): string;
  /** Makes a folder and those above it; a failure is one line. */
  makeFolder(path: string): Result<null, string>;
  /** Writes a file as its pieces come. A failure is one line and leaves nothing half-written. */
  writePieces(path: string, pieces: Iterable<Uint8Array> | AsyncIterable<Uint8Array>): Promise<Result<null, string>>;
  /** The decoded recordings; a failure is one line. */
  sounds(): Promise<Result<SoundSet, string>>;
  /** A browser that prints sheets; what is missing is one line that says what to install. */
  sheetPrinter(): Promise<Result<SheetPrinter, string>>;
}

/** A run that went well. */
export const done = (out: string, err = ''): Outcome => ({ code: 0, out, err });

/** A run whose work has still to be waited for. */
export const later = (rest: () => Promise<Outcome>): Outcome => ({ code: 0, out: '', err: '', rest });

/** Bad use, or a capability that is not there yet: one line and exit code 2. */
export const refused = (faults: readonly string[]): Outcome => ({ code: 2, out: '', err: `${faults.join('; ').replace(/\s+/g, ' ')}\n` });
