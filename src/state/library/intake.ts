import type { Result } from '../../vocabulary';

/** A file that a person chose or dropped. */
export interface GivenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A lead sheet that was read: its chart text, and what was not taken over, one sentence each. */
export interface ReadSheet {
  readonly text: string;
  readonly leftOut: readonly string[];
}

/** Why a file could not be read, as a sentence. */
export interface IntakeFault {
  readonly sentence: string;
}

/** Reads a MusicXML lead sheet. */
export type SheetReader = (file: GivenFile) => Promise<Result<ReadSheet, IntakeFault>>;

/** What became of one file. */
export type Intake =
  | {
      readonly kind: 'taken in';
      readonly name: string;
      readonly chartId: string;
      readonly faults: number;
      readonly leftOut: readonly string[];
    }
  | { readonly kind: 'backup'; readonly name: string; readonly text: string }
  /** An assignment or results: for the Journal, as it is. */
  | { readonly kind: 'assignment'; readonly name: string; readonly bytes: Uint8Array }
  | {
      readonly kind: 'refused';
      readonly name: string;
      readonly why: 'too large' | 'no text' | 'unknown kind' | 'unreadable';
      readonly sentence: string;
    };

/** The largest file that is read, in bytes. */
export const LARGEST_FILE = 2 * 1024 * 1024;
/** The largest score file that is read, in bytes: a whole band's score, not only a lead sheet; it is read in a thread of its own. */
export const LARGEST_SHEET = 16 * 1024 * 1024;
/** The largest backup that is read, in bytes. */
export const LARGEST_BACKUP = 64 * 1024 * 1024;

/** What kind of thing a file is, by its name alone. */
export function kindOfFile(name: string): 'chart' | 'sheet' | 'json' | null {
  if (/\.(txt|chart|text|md)$/i.test(name)) return 'chart';
  if (/\.(musicxml|xml|mxl)$/i.test(name)) return 'sheet';
  return /\.json$/i.test(name) ? 'json' : null;
}

/** What a file of ours holds, by its own word, however damaged the rest is: `{"contratiempo":"backup",…`. Null for another's. */
export function kindOfJson(text: string): 'backup' | 'assignment' | null {
  const [, word] = /"contratiempo"\s*:\s*"(backup|assignment|results)"/.exec(text) ?? [];
  return word === undefined || word === 'backup' ? (word ?? null) : 'assignment';
}

/** The text of a file that should hold text: UTF-8 (with or without its mark) or UTF-16 with its mark; line ends as `\n`. Null for anything else. */
export function textOfBytes(bytes: Uint8Array): string | null {
  const encoding = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : 'utf-8';
  try {
    const text = new TextDecoder(encoding, { fatal: true }).decode(bytes);
    return text.includes('\0') ? null : text.replace(/\r\n?/g, '\n');
  } catch {
    return null;
  }
}
