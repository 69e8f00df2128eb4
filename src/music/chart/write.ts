import { keyName } from '../pitch/key';
import { type Chart, HEADER_NAMES, type HeaderName, type Section } from './chart';
import { defaultHeader } from './read-header';
import { writeRow } from './write-row';

/** A line to be written: where it stood in the text it was read from (0 for a new one), and what it says. */
interface Row {
  readonly line: number;
  readonly text: string;
}

/**
 * Writes a chart as text: the same header lines, sections, rows of bars, blank lines and comments, in their order, with one space
 * around each barline. `readChart(writeChart(chart))` is the same chart; only the columns of its bars may differ (and, when values
 * were added that had no line, the lines).
 */
export function writeChart(chart: Chart): string {
  const rows = [...headerRows(chart), ...chart.sections.flatMap((section, index) => sectionRows(section, index, chart))];
  const form = chart.form && `form: ${chart.form.join(', ')}`;
  if (form) place(rows, { line: chart.headers.find(({ name }) => name === 'form')?.line ?? Number.MAX_SAFE_INTEGER, text: form });
  return print(rows, chart.comments);
}

/** Puts a row among others by its line. */
function place(rows: Row[], row: Row): void {
  const at = rows.findIndex(({ line }) => line > row.line);
  rows.splice(at < 0 ? rows.length : at, 0, row);
}

function headerRows(chart: Chart): Row[] {
  const typed = chart.headers
    .filter(({ name }) => name !== 'form')
    .map(({ name, line }) => ({ line, text: headerLine(chart, name) ?? `${name}:` }));
  const names = new Set(chart.headers.map(({ name }) => name));
  const unsaid = HEADER_NAMES.filter(
    (name) =>
      name !== 'form' && !names.has(name) && headerLine(chart, name) !== headerLine({ ...chart, ...defaultHeader(chart.meter) }, name),
  );
  return [...typed, ...unsaid.flatMap((name) => ({ line: 0, text: headerLine(chart, name) ?? '' }))];
}

function headerLine(chart: Chart, name: HeaderName): string | null {
  switch (name) {
    case 'key':
      return `key: ${keyName(chart.key)}`;
    case 'clave':
      return `clave: ${chart.clave.direction} ${chart.clave.kind}`;
    case 'tempo':
      return `tempo: half = ${chart.tempo}`;
    case 'form':
      return null;
    default:
      return chart[name] === null ? null : `${name}: ${chart[name]}`;
  }
}

function sectionRows(section: Section, index: number, chart: Chart): Row[] {
  const rows: Row[] = [];
  const unheaded = index === 0 && section.line === 0 && writeHead(section) === `[${chart.sections.length > 1 ? 'Start' : 'A'}]`;
  if (!unheaded) rows.push({ line: section.line, text: writeHead(section) });
  for (let from = 0; from < section.bars.length; ) {
    const line = section.bars[from]?.line ?? 0;
    let to = from + 1;
    while (to < section.bars.length && section.bars[to]?.line === line) to += 1;
    const text = writeRow(section.bars.slice(from, to), chart.meter);
    const head = rows.at(-1);
    if (from === 0 && head && head.line === line && line > 0) rows[rows.length - 1] = { line, text: `${head.text} ${text}` };
    else rows.push({ line, text });
    from = to;
  }
  return rows;
}

/** The head of a section as it is typed. */
function writeHead(section: Omit<Section, 'bars'>): string {
  const parts = [section.name];
  if (section.role ?? section.unknownRole) parts.push(`role: ${section.role ?? section.unknownRole}`);
  if (section.times > 1) parts.push(`x${section.times}`);
  if (section.onCue) parts.push('on cue');
  if (section.restart) parts.push(`clave restart ${section.restart}`);
  if (section.expects) parts.push(`clave: ${section.expects}`);
  if (section.style !== null) parts.push(`style: ${section.style}`);
  if (section.key) parts.push(`key: ${keyName(section.key)}`);
  if (section.tempo !== null) parts.push(`tempo: half = ${section.tempo}`);
  if (section.figure !== null) parts.push(`figure: ${section.figure}`);
  return `[${parts.join(', ')}]`;
}

/** Prints rows at the lines they had, as far as that goes, with the comments between and after them. */
function print(rows: readonly Row[], comments: Chart['comments']): string {
  const lines: string[] = [];
  const waiting = [...comments].sort((a, b) => a.line - b.line);
  const write = (text: string, line: number): void => {
    while (lines.length + 1 < line && line < Number.MAX_SAFE_INTEGER) lines.push('');
    lines.push(text);
  };
  rows.forEach((row, index) => {
    while (waiting[0] && (waiting[0].line < row.line || (waiting[0].wholeLine && waiting[0].line === row.line))) {
      const comment = waiting.shift();
      if (comment) write(standing(comment), comment.line);
    }
    const shared = rows[index + 1]?.line === row.line;
    const comment = !shared && waiting[0]?.line === row.line ? waiting.shift() : undefined;
    write(comment ? `${row.text} ;${comment.text}` : row.text, row.line);
  });
  for (const comment of waiting) write(standing(comment), comment.line);
  return `${lines.join('\n')}\n`;
}

/** A comment on a line of its own; one that stood beside a barline alone keeps a barline. */
const standing = ({ text, wholeLine }: Chart['comments'][number]): string => (wholeLine ? `;${text}` : `| ;${text}`);
