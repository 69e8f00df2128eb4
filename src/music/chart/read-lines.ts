/** One line of chart text without its comment. */
export interface TextLine {
  /** From 1. */
  readonly line: number;
  /** What stands before the comment, untrimmed. */
  readonly text: string;
  /** What follows the first semicolon, exactly, or null. */
  readonly comment: string | null;
}

/** Splits text into lines (any line ending) and takes the comments off. `readLines('A ; b')` is one line `'A '` with comment `' b'`. */
export function readLines(text: string): TextLine[] {
  return text.split(/\r\n|\n|\r/).map((whole, index) => {
    const semicolon = whole.indexOf(';');
    if (semicolon < 0) return { line: index + 1, text: whole, comment: null };
    return { line: index + 1, text: whole.slice(0, semicolon), comment: whole.slice(semicolon + 1) };
  });
}

/** The parts of `text` between `separator`s, trimmed, each with the column (from 1) of its first character. `column` is that of `text` itself. */
export function splitAt(text: string, separator: string, column: number): { readonly text: string; readonly column: number }[] {
  let start = column;
  return text.split(separator).map((part) => {
    const blank = part.length - part.trimStart().length;
    const piece = { text: part.trim(), column: start + blank };
    start += part.length + separator.length;
    return piece;
  });
}
