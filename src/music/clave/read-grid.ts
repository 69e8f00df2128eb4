import { failed, ok, type Result } from '../../vocabulary';

/** What is wrong with a grid that a person typed; `column` counts from 1. */
export interface GridFault {
  readonly code: 'grid symbol' | 'grid length';
  readonly column: number;
  /** The offending text, as typed. */
  readonly text: string;
  readonly expected: string;
}

/**
 * Reads a rhythm of one clave cycle: `x` strikes, `.` rests, spaces and bars are ignored; 16 steps (4/4) or 12 (6/8).
 * Every fault is reported. Example: `readGrid('..x.x... x..x..x.')` gives 16 booleans, true at 2 4 8 11 14.
 */
export function readGrid(text: string): Result<readonly boolean[], GridFault> {
  const grid: boolean[] = [];
  const faults: GridFault[] = [];
  let column = 0;
  for (const symbol of text) {
    column += 1;
    if (/[\s|]/u.test(symbol)) continue;
    if (symbol === 'x' || symbol === 'X') grid.push(true);
    else if (symbol === '.') grid.push(false);
    else faults.push({ code: 'grid symbol', column, text: symbol, expected: 'x for a stroke or . for a rest' });
  }
  if (faults.length > 0) return failed(...faults);
  if (grid.length === 16 || grid.length === 12) return ok(grid);
  return failed({
    code: 'grid length',
    column: 1,
    text,
    expected: `16 steps (two bars of eighths in 4/4) or 12 (6/8), found ${grid.length}`,
  });
}
