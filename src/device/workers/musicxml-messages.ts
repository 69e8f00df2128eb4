import type { ImportedChart, ImportFault } from '../../exchange/musicxml/read-musicxml';
import type { Speech } from '../../exchange/speech';
import type { Result } from '../../vocabulary';

/** What the page asks of the thread that reads score files: one file. */
export interface ReadScore {
  readonly bytes: Uint8Array;
  readonly name: string;
  /** How the thread speaks of faults; English when missing. */
  readonly speech?: Speech;
}

/** What that thread says: how far it is, 0 to 1, and what it found. */
export type ScoreMessage =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'done'; readonly result: Result<ImportedChart, ImportFault> };
