/** What a new chart begins with: a whole, playable page to type over. */
export const NEW_CHART = `title: New chart
key: F
clave: 2-3 son
tempo: half = 88

[A]
| Gm7 | C7 | F6 | D7 ||
`;

/** The title of a chart's text, read without reading the chart, so that faulty text has one too. */
export function titleOf(text: string): string {
  const title = /^[ \t]*title[ \t]*:[ \t]*([^\r\n;]*)/im.exec(text)?.[1]?.trim() ?? '';
  return title === '' ? 'Untitled' : title.slice(0, 120);
}

/** Where `line` and `column` (both from 1) stand in `text`, as an index from 0, held within the text. */
export function placeInText(text: string, line: number, column: number): number {
  let start = 0;
  for (let at = 1; at < line; at += 1) {
    const end = text.indexOf('\n', start);
    if (end === -1) return text.length;
    start = end + 1;
  }
  return Math.min(text.length, start + column - 1);
}
