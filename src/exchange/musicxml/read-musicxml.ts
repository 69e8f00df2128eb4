import type { Result } from '../../vocabulary';
import type { ImportFault } from '../../words/import-screen';
import { chartOfLeadSheet, type ImportedChart } from './chart-of-lead-sheet';
import { readLeadSheet } from './lead-sheet';
import { readScoreText } from './read-score-text';
import { readXml } from './read-xml';

export type { ImportFault, NotTaken } from '../../words/import-screen';
export type { ImportedChart } from './chart-of-lead-sheet';

/**
 * A score file (`.musicxml`, `.xml`, `.mxl`) as chart text: chord symbols, bars, repeats, endings, jumps, sections, key, meter and tempo of the part
 * that has chord symbols. `name` is the file's, for a score without a title. Everything that a chart does not hold is listed. Never throws, whatever the
 * bytes; nothing larger than `MOST_BYTES` is read, no entity expanded, nothing fetched. `progress` is told the share of the text that has been read.
 */
export function readMusicXml(bytes: Uint8Array, name: string, progress?: (share: number) => void): Result<ImportedChart, ImportFault> {
  const text = readScoreText(bytes);
  if (!text.ok) return text;
  const root = readXml(text.value, progress);
  if (!root.ok) return root;
  const sheet = readLeadSheet(root.value);
  return sheet.ok ? chartOfLeadSheet(sheet.value, name) : sheet;
}
