import { describeChord } from '../music/chord/members';
import { readChord } from '../music/chord/read';
import { alignment } from '../music/clave/alignment';
import { claveSteps, cycleSteps, gridOfSteps, gridText } from '../music/clave/patterns';
import { readGrid } from '../music/clave/read-grid';
import type { Clave } from '../vocabulary';
import { alignmentSentence } from '../words/alignment-sentence';
import type { CommandLine } from './command-line';
import { OptionReader } from './option-reader';
import { done, type Outcome, refused } from './outcome';

const DIRECTIONS = ['2-3', '3-2'] as const;
const KINDS = ['son', 'rumba', 'bembe'] as const;

/** `chord SYMBOL…`: what each symbol is read as, one JSON object a line; a symbol that cannot be read has `error`. */
export function chordCommand({ operands }: CommandLine): Outcome {
  if (operands.length === 0) return refused(['a chord symbol is missing']);
  return done(operands.map((symbol) => `${JSON.stringify(chordLine(symbol))}\n`).join(''));
}

function chordLine(symbol: string): object {
  const read = readChord(symbol);
  if (read.ok) return describeChord(read.value);
  const [fault] = read.faults;
  const nearest = fault?.nearest ? `; nearest ${fault.nearest}` : '';
  return { symbol, error: `cannot read ${JSON.stringify(fault?.text ?? symbol)}, expected ${fault?.expected}${nearest}` };
}

/** `clave`: the strokes of a clave, son 2-3 unless asked otherwise, as JSON or as a grid. */
export function claveCommand({ operands, values }: CommandLine): Outcome {
  const reader = new OptionReader(values);
  const clave: Clave = { kind: reader.oneOf('kind', KINDS) ?? 'son', direction: reader.oneOf('clave', DIRECTIONS) ?? '2-3' };
  const format = reader.oneOf('format', ['json', 'grid']) ?? 'json';
  if (operands.length > 0) reader.faults.push(`clave takes options alone, got ${JSON.stringify(operands[0])}`);
  if (reader.faults.length > 0) return refused(reader.faults);
  const steps = claveSteps(clave);
  const grid = gridText(gridOfSteps(steps, cycleSteps(clave.kind)));
  return done(`${format === 'json' ? JSON.stringify({ kind: clave.kind, direction: clave.direction, grid, steps }) : grid}\n`);
}

/** `alignment GRID…`: what each rhythm states, one JSON object a line; a grid that cannot be read is bad use. */
export function alignmentCommand({ operands, values }: CommandLine): Outcome {
  const reader = new OptionReader(values);
  const direction = reader.oneOf('clave', DIRECTIONS);
  const grids = operands.map((text) => ({ text, read: readGrid(text) }));
  if (grids.length === 0) reader.faults.push('a grid is missing: 16 or 12 steps of x and .');
  for (const { text, read } of grids) {
    if (!read.ok)
      reader.faults.push(
        ...read.faults.map(({ column, expected }) => `grid ${JSON.stringify(text)}, column ${column}: expected ${expected}`),
      );
  }
  if (reader.faults.length > 0) return refused(reader.faults);
  const clave: Clave | null = direction ? { kind: 'son', direction } : null;
  const lines = grids.flatMap(({ text, read }) => {
    if (!read.ok) return [];
    const found = alignment(read.value, clave);
    const { states, score, verdict } = found;
    return [`${JSON.stringify({ grid: text, states, score, verdict, reason: alignmentSentence(found) })}\n`];
  });
  return done(lines.join(''));
}
