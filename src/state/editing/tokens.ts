/** What a piece of chart text is. */
export type TokenKind =
  | 'comment'
  | 'header name'
  | 'header value'
  | 'head'
  | 'barline'
  | 'chord'
  | 'sign'
  | 'word'
  | 'hits'
  | 'mark'
  | 'length'
  | 'plain';

/** A piece of one line: where it begins (from 0), what it is and what stands there. */
export interface Token {
  readonly at: number;
  readonly kind: TokenKind;
  readonly text: string;
}

const HEADER = /^(\s*)(\w+)(\s*:)(?!\|)/;
const PIECE =
  /(?<hits>\{[^}]*\}?)|(?<mark><[^>]*>?)|(?<barline>:?\|\|?:?(?:\s*[x×]\s*\d+|\s?\d+(?:\s*,\s*\d+)*\.)?)|(?<length>\((?:\d+\/\d+|pickup)\))|(?<sign>%%?|\/(?=\s|\||$))|(?<word>N\.?C\.?|stop|rests?(?:\s+\d+)?)(?=\s|\||$)|(?<chord>>?[A-G][^\s|]*)|(?<plain>[^\s|]+)/giu;

/** One line of chart text in pieces, in order; blanks between them are left out. It reads no music: only how the line is written. */
export function tokensOf(line: string): readonly Token[] {
  const semicolon = line.indexOf(';');
  const body = semicolon < 0 ? line : line.slice(0, semicolon);
  const comment: Token[] = semicolon < 0 ? [] : [{ at: semicolon, kind: 'comment', text: line.slice(semicolon) }];
  return [...bodyTokens(body), ...comment];
}

function bodyTokens(body: string): Token[] {
  const head = /^\s*\[/.exec(body);
  if (head) return [{ at: head[0].length - 1, kind: 'head', text: body.slice(head[0].length - 1).trimEnd() }];
  const header = HEADER.exec(body);
  if (header) return headerTokens(body, header);
  return [...body.matchAll(PIECE)].map((match) => ({ at: match.index, kind: kindOf(match), text: match[0] }));
}

function headerTokens(body: string, header: RegExpExecArray): Token[] {
  const blank = header[1]?.length ?? 0;
  const value = body.slice(header[0].length);
  const at = header[0].length + value.length - value.trimStart().length;
  const name: Token = { at: blank, kind: 'header name', text: header[0].slice(blank) };
  return value.trim() === '' ? [name] : [name, { at, kind: 'header value', text: value.trim() }];
}

function kindOf(match: RegExpMatchArray): TokenKind {
  // The pattern ignores case for words such as STOP; a root is a capital all the same.
  if (match.groups?.chord !== undefined && !/^>?[A-G]/.test(match[0])) return 'plain';
  const found = Object.entries(match.groups ?? {}).find(([, text]) => text !== undefined);
  return (found?.[0] ?? 'plain') as TokenKind;
}
