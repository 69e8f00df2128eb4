/** Longest title that is written, in characters. */
const LONGEST_TITLE = 120;
const TITLE_LINE = /^([ \t]*title[ \t]*:)[^\r\n;]*/im;

/** Chart text under another title: its `title:` line changed, or one put on top; all else stays as typed. */
export function titled(text: string, title: string): string {
  // A semicolon would begin a comment, a line break another line.
  const plain = title
    .replace(/[\s;]+/g, ' ')
    .trim()
    .slice(0, LONGEST_TITLE);
  if (!TITLE_LINE.test(text)) return `title: ${plain}\n${text}`;
  return text.replace(TITLE_LINE, (line, name: string) =>
    `${name} ${plain}${/\s$/.test(line) && line.trim() !== name ? ' ' : ''}`.trimEnd(),
  );
}
