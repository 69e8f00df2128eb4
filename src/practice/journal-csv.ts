import type { JournalRecord } from './journal';

/** The columns of the file, in order; the words above them are the caller's. */
export const JOURNAL_COLUMNS = [
  'at',
  'kind',
  'title',
  'bars',
  'tempo',
  'level',
  'direction',
  'clean',
  'shareRight',
  'offsetMs',
  'spreadMs',
  'source',
  'result',
  'text',
] as const;
/** One of the columns. */
export type JournalColumn = (typeof JOURNAL_COLUMNS)[number];

/**
 * The journal as comma-separated values (RFC 4180: CRLF, quotes doubled), oldest first. `headings` are the words above the columns,
 * `words` puts kinds and results into words; moments are ISO 8601 in UTC. Text that a spreadsheet would take for a formula gets an
 * apostrophe before it.
 */
export function journalCsv(
  records: readonly JournalRecord[],
  headings: Readonly<Record<JournalColumn, string>>,
  words: (plain: string) => string,
): string {
  const rows = [...records]
    .sort((a, b) => a.at - b.at)
    .map((record) => JOURNAL_COLUMNS.map((column) => cell(cellValue(record, column, words))));
  return [JOURNAL_COLUMNS.map((column) => cell(headings[column])), ...rows].map((row) => `${row.join(',')}\r\n`).join('');
}

function cellValue(record: JournalRecord, column: JournalColumn, words: (plain: string) => string): string | number {
  const pass = record.kind === 'pass' ? record : null;
  switch (column) {
    case 'at':
      return new Date(record.at).toISOString();
    case 'kind':
      return words(record.kind === 'drill' ? record.drill : record.kind);
    case 'title':
      return record.title;
    case 'bars':
      return pass ? `${pass.fromBar + 1}–${pass.toBar}` : '';
    case 'clean':
      return pass ? words(pass.clean ? 'yes' : 'no') : '';
    case 'result':
      return record.kind === 'check' ? words(record.result) : record.kind === 'drill' ? `${record.right}/${record.of}` : '';
    case 'text':
      return record.kind === 'note' ? record.text : '';
    case 'shareRight':
      return pass?.shareRight == null ? '' : Math.round(pass.shareRight * 1000) / 1000;
    case 'offsetMs':
    case 'spreadMs':
      return pass?.[column] == null ? '' : Math.round((pass[column] ?? 0) * 10) / 10;
    case 'source':
      return pass ? words(pass.source) : '';
    default:
      return pass ? pass[column] : '';
  }
}

function cell(value: string | number): string {
  if (typeof value === 'number') return String(value);
  // After OWASP, "CSV injection": signs that begin a formula, their full-width forms too, also after blanks that a program may take away.
  const safe = /^[\t\r\n]|^\s*[=+\-@＝＋－＠]/u.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
