import type { Chart, Key, Section, WrittenBar } from '../../music/chart/chart';
import { readChart } from '../../music/chart/read';
import { headless } from '../../music/chart/read-head';
import { defaultHeader } from '../../music/chart/read-header';
import { readClaveValue, readStyle } from '../../music/chart/read-values';
import { transposeChart } from '../../music/chart/transpose-chart';
import { writeChart } from '../../music/chart/write';
import { keyName } from '../../music/pitch/key';
import { nameAtFifths } from '../../music/pitch/spell';
import { failed, type HalfNotesPerMinute, halfNotesPerMinute, ok, type Result, TEMPO_RANGE } from '../../vocabulary';
import type { ImportFault, NotTaken } from '../../words/import-screen';
import { barSource, slotChords } from './bar-source';
import { type FormKept, formOf } from './form-of-lead-sheet';
import type { LeadSheet } from './lead-sheet';
import { orderSections } from './order-sections';

/** A chart made of a score file. */
export interface ImportedChart {
  /** Chart text that `readChart` reads. */
  readonly text: string;
  readonly title: string;
  /** What was left out or changed, in the order of the score. */
  readonly notTaken: readonly NotTaken[];
}

/** What is given up, one after another, until the chart can be read: first jumps that lead nowhere, then repeats that do not balance. */
const STEPS: readonly { readonly kept: FormKept; readonly lost: readonly NotTaken[] }[] = [
  { kept: { jumps: true, repeats: true }, lost: [] },
  { kept: { jumps: false, repeats: true }, lost: [{ code: 'jumps', bar: null, detail: {} }] },
  { kept: { jumps: true, repeats: false }, lost: [{ code: 'repeats', bar: null, detail: {} }] },
  {
    kept: { jumps: false, repeats: false },
    lost: [
      { code: 'jumps', bar: null, detail: {} },
      { code: 'repeats', bar: null, detail: {} },
    ],
  },
];

/** A lead sheet as chart text, written by `writeChart` and read again, so that what is handed on is always a chart. `name` stands in for a missing title. */
export function chartOfLeadSheet(sheet: LeadSheet, name: string): Result<ImportedChart, ImportFault> {
  let fault = { text: '', expected: '' };
  for (const { kept, lost } of STEPS) {
    const { chart, notTaken } = buildChart(sheet, name, kept);
    const read = readChart(writeChart(chart));
    if (!read.ok) {
      fault = read.faults[0] ?? fault;
      continue;
    }
    const moved = sheet.transpose % 12 === 0 ? [] : [{ code: 'transposed' as const, bar: null, detail: { semitones: sheet.transpose } }];
    const text = writeChart(transposeChart(read.value, sheet.transpose % 12));
    const all = [...sheet.notTaken, ...lost, ...moved, ...notTaken];
    return ok({ text, title: chart.title, notTaken: all.toSorted((a, b) => (a.bar ?? 0) - (b.bar ?? 0)) });
  }
  return failed({ code: 'not a chart', line: null, column: null, text: fault.text, expected: fault.expected });
}

/** Bars in a row of the text. */
const ROW = 4;

function buildChart(sheet: LeadSheet, name: string, kept: FormKept): { readonly chart: Chart; readonly notTaken: readonly NotTaken[] } {
  const form = formOf(sheet, kept);
  const { slotted, notTaken } = slotChords(sheet.bars, sheet.meter);
  const header = headerOf(sheet, name);
  const said: NotTaken[] = [...form.notTaken, ...notTaken, ...header.notTaken];
  let source = '';
  let key = header.key;
  let tempo = header.tempo;
  const drafts: { -readonly [Field in keyof Section]: Section[Field] }[] = [];
  const barsOf: WrittenBar[][] = [];
  sheet.bars.forEach((lead, index) => {
    const signs = form.bars[index];
    const slots = slotted[index];
    if (!signs || !slots) return;
    const before = slotted[index - 1];
    source = barSource(slots, before ? { bar: before, source } : null, sheet.meter);
    const begins = index === 0 || signs.section !== null;
    const newKey = lead.key ? keyOf(lead.key) : null;
    const newTempo = lead.quarters === null ? null : tempoOf(lead.quarters);
    const changes = {
      key: index > 0 && newKey !== null && keyName(newKey) !== keyName(key),
      tempo: index > 0 && newTempo !== null && newTempo !== tempo,
    };
    if (begins) {
      const named = sectionName(signs.section) || (sheet.bars.some(({ section }) => section !== null) ? 'Start' : 'A');
      drafts.push({ ...headless(named), bars: [] });
      barsOf.push([]);
    }
    if (changes.key && newKey) key = newKey;
    if (changes.tempo && newTempo !== null) tempo = newTempo;
    const section = drafts.at(-1);
    if (begins && section) {
      if (keyName(key) !== keyName(header.key)) section.key = key;
      if (tempo !== header.tempo) section.tempo = tempo;
    } else if (changes.key) said.push({ code: 'key change', bar: index + 1, detail: { key: keyName(key) } });
    else if (changes.tempo) said.push({ code: 'tempo change', bar: index + 1, detail: {} });
    barsOf.at(-1)?.push({
      content: source === '%' ? { kind: 'repeat', bars: 1 } : { kind: 'chords', chords: [] },
      source,
      hits: [],
      ticks: lead.ticks,
      pickup: lead.pickup,
      ...signs,
      line: 0,
      column: 1,
    });
  });
  const ordered = orderSections(drafts.map((draft, index) => ({ ...draft, bars: barsOf[index] ?? [] })));
  said.push(...ordered.notTaken);
  const { key: _, tempo: __, notTaken: ___, ...rest } = header;
  const chart: Chart = {
    ...rest,
    key: header.key,
    tempo: header.tempo ?? defaultHeader(sheet.meter).tempo,
    changes: 'on the beat',
    figure: null,
    comments: [],
    notices: [],
    form: ordered.form,
    sections: ordered.sections,
  };
  return { chart: onLines(chart), notTaken: said };
}

type Header = Pick<Chart, 'title' | 'key' | 'clave' | 'style' | 'meter' | 'headers'> & {
  readonly tempo: HalfNotesPerMinute | null;
  readonly notTaken: readonly NotTaken[];
};

function headerOf(sheet: LeadSheet, name: string): Header {
  const { meter, fields, bars } = sheet;
  const defaults = defaultHeader(meter);
  const notTaken: NotTaken[] = [];
  const first = bars.find(({ key }) => key !== null)?.key ?? null;
  const key = bars[0]?.key ? keyOf(bars[0].key) : first ? keyOf(first) : defaults.key;
  for (const [index, bar] of bars.entries())
    if (bar.key && bar.key.mode !== 'major' && bar.key.mode !== 'minor')
      notTaken.push({ code: 'mode', bar: index + 1, detail: { mode: bar.key.mode, key: keyName(keyOf(bar.key)) } });
  const quarters = bars.find((bar) => bar.quarters !== null)?.quarters ?? null;
  const tempo = quarters === null ? null : tempoOf(quarters);
  if (quarters !== null && tempo === null) notTaken.push({ code: 'tempo', bar: null, detail: { quarters: Math.round(quarters) } });
  const clave = readClaveValue(fields.clave ?? '');
  const kind = clave.ok ? (clave.value.kind ?? defaults.clave.kind) : defaults.clave.kind;
  const fits = clave.ok && (kind === 'bembe') === (meter === '6/8');
  const style = readStyle(fields.style ?? '');
  const title = lineOf(sheet.title) || lineOf(name.replace(/\.(musicxml|xml|mxl)$/i, '')) || defaults.title;
  return {
    title,
    key,
    tempo,
    meter,
    clave: fits ? { kind, direction: clave.value.direction } : defaults.clave,
    style: style.ok ? style.value : defaults.style,
    headers: [],
    notTaken,
  };
}

/** Longest title that is taken. */
const LONGEST_TITLE = 120;
/** Text on one line, without the sign that begins a comment. */
const lineOf = (text: string): string =>
  text
    .replace(/\p{Cc}+/gu, ' ')
    .replaceAll(';', ',')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, LONGEST_TITLE)
    .trim();
/** A rehearsal mark as the name of a section: without what a head or a form line divides by. */
const sectionName = (mark: string | null): string =>
  lineOf((mark ?? '').replace(/[[\]|,:]/g, ' '))
    .slice(0, 40)
    .trim();

function keyOf({ fifths, mode }: { readonly fifths: number; readonly mode: string }): Key {
  const minor = mode === 'minor';
  return { tonic: nameAtFifths(Math.max(-7, Math.min(7, fifths)) + (minor ? 3 : 0)), mode: minor ? 'minor' : 'major' };
}

/** Half notes a minute to a hundredth, or null outside what can be played. */
function tempoOf(quarters: number): HalfNotesPerMinute | null {
  const halves = Math.round(quarters * 50) / 100;
  return halves >= TEMPO_RANGE.from && halves <= TEMPO_RANGE.to ? halfNotesPerMinute(halves) : null;
}

/** Gives every row of the chart its line: header, a blank line before each section, four bars a row, a repeat at the start of one. */
function onLines(chart: Chart): Chart {
  const said = (['title', 'key', 'clave', 'tempo', 'style'] as const).map((name, index) => ({ name, line: index + 1 }));
  const headers = chart.meter === '6/8' ? [...said, { name: 'meter' as const, line: said.length + 1 }] : said;
  let line = headers.length;
  const bare = chart.sections.length === 1 && chart.sections[0]?.name === 'A' && chart.form === null;
  const sections = chart.sections.map((section): Section => {
    line += 2;
    const head = bare ? 0 : line;
    if (bare) line -= 1;
    let inRow = ROW;
    const bars = section.bars.map((bar) => {
      if (inRow === ROW || (bar.repeatStart && inRow > 0)) {
        line += 1;
        inRow = 0;
      }
      inRow += 1;
      return { ...bar, line };
    });
    return { ...section, line: head, bars };
  });
  return { ...chart, sections, headers: chart.form ? [...headers, { name: 'form', line: line + 2 }] : headers };
}
