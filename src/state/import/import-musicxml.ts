import type { ImportedChart, ImportFault } from '../../exchange/musicxml/read-musicxml';
import { failed, type Result } from '../../vocabulary';
import { IMPORT_WORDS } from '../../words/import-screen';
import type { SheetReader } from '../library/intake';

/** Reads a score file away from the page: what was found, or that the reading had to be stopped. */
export type ScoreReader = (file: {
  readonly bytes: Uint8Array;
  readonly name: string;
}) => Promise<
  | { readonly kind: 'read'; readonly result: Result<ImportedChart, ImportFault> }
  | { readonly kind: 'too long' }
  | { readonly kind: 'failed'; readonly reason: string }
>;

/** A score file as chart text with its title and what was not taken over, or one fault with its place. Never rejects. */
export type ImportMusicXml = (bytes: Uint8Array, name: string) => Promise<Result<ImportedChart, ImportFault>>;

/** The import of MusicXML over a reader in a thread of its own. */
export function createMusicXmlImport(read: ScoreReader): ImportMusicXml {
  const stopped = (code: ImportFault['code'], expected: string, text = ''): Result<never, ImportFault> =>
    failed({ code, line: null, column: null, text, expected });
  return async (bytes, name) => {
    try {
      const reading = await read({ bytes, name });
      if (reading.kind === 'read') return reading.result;
      if (reading.kind === 'too long') return stopped('took too long', IMPORT_WORDS.expected.lessWork);
      return stopped('stopped', IMPORT_WORDS.expected.again, reading.reason);
    } catch (error) {
      return stopped('stopped', IMPORT_WORDS.expected.again, error instanceof Error ? error.message : '');
    }
  };
}

/** The import as the library takes lead sheets in: faults and what was left out as sentences. */
export function sheetReader(importMusicXml: ImportMusicXml): SheetReader {
  return async ({ bytes, name }) => {
    const read = await importMusicXml(bytes, name);
    if (!read.ok) return { ok: false, faults: read.faults.map((fault) => ({ sentence: IMPORT_WORDS.fault(fault) })) };
    const { text, notTaken } = read.value;
    return { ok: true, value: { text, leftOut: notTaken.map((item) => IMPORT_WORDS.notTaken(item)) } };
  };
}
