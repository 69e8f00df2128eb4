import type { Place } from './faults';

/** A barline as typed, with what is written at it. */
export interface Barline {
  readonly place: Place;
  /** `:|` */
  readonly end: boolean;
  /** n of `:| xn`; null when it is not written. */
  readonly times: number | null;
  /** `|:` */
  readonly start: boolean;
  /** `||` */
  readonly double: boolean;
  /** The numbers of `|1,2.`, or null. */
  readonly ending: readonly number[] | null;
}

/** A row of bars: cells (what stands between barlines) and barlines in the order of the text. */
export type RowPiece = { readonly kind: 'barline'; readonly barline: Barline } | { readonly kind: 'cell'; readonly place: Place };

const BARLINE = /(:)?\|(\|)?(:)?/y;
const TIMES = /\s*[x×]\s*(\d{1,9})(?![^\s|:])/y;
const ENDING = /\s?(\d{1,4}(?:\s*,\s*\d{1,4})*)\./y;

/** Cuts a row at its barlines. Cells keep their blanks; empty ones (`||` apart) are cells too. `column` is that of the first character, from 1. */
export function splitRow(text: string, line: number, column: number): RowPiece[] {
  const pieces: RowPiece[] = [];
  let from = 0;
  const take = (pattern: RegExp, at: number): RegExpExecArray | null => {
    pattern.lastIndex = at;
    return pattern.exec(text);
  };
  for (let at = text.indexOf('|'); at >= 0; at = text.indexOf('|', from)) {
    const start = at > from && text[at - 1] === ':' ? at - 1 : at;
    const bar = take(BARLINE, start) as RegExpExecArray;
    let to = start + bar[0].length;
    const end = bar[1] !== undefined;
    const times = end && bar[3] === undefined ? take(TIMES, to) : null;
    if (times) to += times[0].length;
    const ending = take(ENDING, to);
    if (ending) to += ending[0].length;
    pieces.push({ kind: 'cell', place: { line, column: column + from, text: text.slice(from, start) } });
    pieces.push({
      kind: 'barline',
      barline: {
        place: { line, column: column + start, text: text.slice(start, to).trim() },
        end,
        times: times ? Number(times[1]) : null,
        start: bar[3] !== undefined,
        double: bar[2] !== undefined,
        ending: ending ? (ending[1] ?? '').split(',').map(Number) : null,
      },
    });
    from = to;
  }
  pieces.push({ kind: 'cell', place: { line, column: column + from, text: text.slice(from) } });
  return pieces;
}

/** The place of a cell's text without the blanks around it. */
export function trimmed(place: Place): Place {
  const text = place.text.trim();
  return { line: place.line, column: place.column + place.text.length - place.text.trimStart().length, text };
}
