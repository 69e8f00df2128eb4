import { failed, ok, type Result } from '../../vocabulary';
import { type Chart, type ChartFault, type ChartNotice, SECTION_ROLES, type Section } from './chart';
import { checkLength, checkSections } from './check-form';
import { FaultList, type Place } from './faults';
import { MAX_TEXT_LENGTH } from './limits';
import { nearest } from './nearest';
import { meetPartLine } from './part-words';
import { readForm } from './read-form';
import { headless, readHead } from './read-head';
import { type HeaderLine, isHeaderLine, readHeader, readHeaderLine } from './read-header';
import { readLines, type TextLine } from './read-lines';
import { SectionDraft } from './section-draft';
import { styleNamed } from './style-names';

/**
 * Reads chart text. Missing header lines have the values of `HEADER_DEFAULTS`; a chart without a section head is one section, `A`.
 * Returns the chart, or every fault that was found (the first 500), in the order of the text. Never throws, whatever the string.
 * `readChart('| Em7 | A7 |')` is a chart of one section with two bars.
 */
export function readChart(text: string): Result<Chart, ChartFault> {
  const unreadable = whole(text);
  if (unreadable) return failed(unreadable);
  const lines = readLines(text);
  const faults = new FaultList();
  const headerLines = collectHeader(lines, faults);
  const header = readHeader(headerLines, faults);
  const sections = readSections(lines, header.meter, faults);
  const formLine = headerLines.find(({ name }) => name === 'form');
  const form = formLine ? readForm(formLine.value, sections, faults) : null;
  const resolved = checkSections(sections, lines, faults);
  const comments = lines.flatMap(({ line, text: before, comment }) =>
    comment === null ? [] : [{ line, text: comment, wholeLine: before.trim() === '' }],
  );
  const chart: Chart = { ...header, sections, form, comments, notices: noticesOf(header, sections) };
  if (faults.empty) checkLength(chart, resolved, lines, faults);
  return faults.empty ? ok(chart) : failed(...faults.sorted());
}

/** A fault of the text as a whole: too long, or no text at all. */
function whole(text: string): ChartFault | null {
  if (text.length > MAX_TEXT_LENGTH) {
    return {
      code: 'text too long',
      line: 1,
      column: 1,
      text: text.slice(0, 20),
      expected: `at most ${MAX_TEXT_LENGTH} characters, this is ${text.length}`,
      nearest: null,
    };
  }
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what tells another kind of file from text
  const control = /[\u0000-\u0008\u000e-\u001f\ufffd]/.exec(text);
  if (!control) return null;
  const before = readLines(text.slice(0, control.index).replaceAll(';', ','));
  return {
    code: 'no text',
    line: before.length,
    column: (before.at(-1)?.text.length ?? 0) + 1,
    text: control[0],
    expected: 'chart text: this looks like a file of another kind',
    nearest: null,
  };
}

const isHead = (text: string): boolean => text.trimStart().startsWith('[');

function collectHeader(lines: readonly TextLine[], faults: FaultList): HeaderLine[] {
  const found = new Map<string, HeaderLine>();
  let music = false;
  for (const { line, text } of lines) {
    if (!isHeaderLine(text)) {
      music ||= text.trim() !== '';
      continue;
    }
    const header = readHeaderLine(text, line, faults);
    if (!header) continue;
    const place: Place = { line, column: text.length - text.trimStart().length + 1, text: text.trim() };
    if (found.has(header.name))
      faults.add('header twice', place, `one line "${header.name}:", the first is on line ${found.get(header.name)?.value.line}`);
    else if (music && header.name !== 'form')
      faults.add('header after music', place, `this line before the first bar, or in a section head: [B, ${text.trim()}]`);
    else found.set(header.name, header);
  }
  return [...found.values()];
}

function readSections(lines: readonly TextLine[], meter: Chart['meter'], faults: FaultList): Section[] {
  const drafts: SectionDraft[] = [];
  const names = new Set<string>();
  const hasHeads = lines.some(({ text }) => isHead(text));
  for (const { line, text } of lines) {
    if (text.trim() === '' || isHeaderLine(text)) continue;
    const indent = text.length - text.trimStart().length;
    if (!isHead(text)) {
      if (meetPartLine(text, line, faults)) continue;
      const draft =
        drafts.at(-1) ??
        new SectionDraft(headless(hasHeads ? 'Start' : 'A'), { line, column: indent + 1, text: text.trim() }, meter, faults);
      if (drafts.length === 0) {
        drafts.push(draft);
        names.add(draft.head.name.toLowerCase());
      }
      draft.addRow(text, line, 1);
      continue;
    }
    const close = text.indexOf(']', indent);
    const end = close < 0 ? text.length : close;
    const place: Place = { line, column: indent + 1, text: text.slice(indent, end + 1).trimEnd() };
    if (close < 0)
      faults.add('head not closed', place, "a ] after the section's name", place.text.replace(/\s*($|\|)/, ']$1').replace(']|', '] |'));
    const head = readHead(text.slice(indent + 1, end), line, indent + 2, meter, faults);
    if (head.name === '')
      faults.add(
        'no section name',
        place,
        'a name first: [A] or [Coro, role: coro]',
        place.text.replace(/^\[\s*/, '[A').replace(/\]?$/, ']'),
      );
    const known = head.name.toLowerCase();
    if (names.has(known) && known !== '')
      faults.add(
        'section twice',
        place,
        'a name no other section has; a form: line plays a section again',
        faults.full ? null : place.text.replace(head.name, freeName(head.name, names)),
      );
    names.add(known);
    const draft = new SectionDraft(head, place, meter, faults);
    drafts.push(draft);
    draft.addRow(text.slice(end + 1), line, end + 2);
  }
  if (drafts.length === 0) faults.add('no bars', { line: 1, column: 1, text: '' }, 'a chart needs at least one bar: | Em7 | A7 |');
  for (const draft of drafts) {
    if (draft.barCount === 0) faults.add('empty section', draft.place, 'at least one bar in every section');
  }
  return drafts.map((draft) => draft.finish());
}

function freeName(name: string, taken: ReadonlySet<string>): string {
  let number = 2;
  while (taken.has(`${name}${number}`.toLowerCase())) number += 1;
  return `${name}${number}`;
}

/** What is worth saying about the text as typed: a style of the other meter, a role that there is not. */
function noticesOf({ style, meter }: Pick<Chart, 'style' | 'meter'>, sections: readonly Section[]): ChartNotice[] {
  const against = (name: string, section: string | null): ChartNotice[] => {
    const usual = styleNamed(name)?.meter;
    return usual && usual !== meter ? [{ code: 'style against meter', bar: null, section, detail: { style: name, meter, usual } }] : [];
  };
  const roles = sections.flatMap(({ name, line, unknownRole }): ChartNotice[] => {
    if (!unknownRole) return [];
    const near = nearest(unknownRole, SECTION_ROLES);
    return [
      { code: 'unknown role', bar: null, section: name, detail: { role: unknownRole, line, ...(near === null ? {} : { nearest: near }) } },
    ];
  });
  return [
    ...against(style, null),
    ...sections.flatMap((section) => (section.style === null ? [] : against(section.style, section.name))),
    ...roles,
  ];
}
