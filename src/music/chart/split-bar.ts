import type { Place } from './faults';

/** One thing in a bar: a word (a chord, `/`, `%`, `stop` …), a mark in `<>`, a length in `()`, hits in `{}`. `closed` is false when the bracket never closes. */
export interface BarToken {
  readonly kind: 'word' | 'mark' | 'length' | 'hits';
  /** Brackets included. */
  readonly place: Place;
  readonly closed: boolean;
}

const BRACKETS = { '<': ['mark', '>'], '(': ['length', ')'], '{': ['hits', '}'] } as const;
const WORD = /[^\s{<]+/y;

/** Cuts what stands between two barlines into tokens. A bracket opens a token only at its start, so `C7(b9)` is one word. */
export function splitBar(cell: Place): BarToken[] {
  const tokens: BarToken[] = [];
  const { text } = cell;
  for (let at = 0; at < text.length; ) {
    const first = text[at] ?? '';
    if (first === ' ' || /\s/.test(first)) {
      at += 1;
      continue;
    }
    let kind: BarToken['kind'] = 'word';
    let to: number;
    let closed = true;
    if (first === '<' || first === '(' || first === '{') {
      const [bracket, close] = BRACKETS[first];
      kind = bracket;
      to = text.indexOf(close, at) + 1;
      closed = to > 0;
      if (!closed) to = text.length;
    } else {
      WORD.lastIndex = at;
      to = at + (WORD.exec(text)?.[0].length ?? 1);
    }
    tokens.push({ kind, closed, place: { line: cell.line, column: cell.column + at, text: text.slice(at, to).trimEnd() } });
    at = to;
  }
  return tokens;
}
