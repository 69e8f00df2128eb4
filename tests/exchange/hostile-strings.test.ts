/** One table of hostile texts through everything that leaves the page as a file, each read back by a reader of its own. */
import { readFileSync } from 'node:fs';
import { parseMidi } from 'midi-file';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { assignmentFileName, resultsFileName } from '../../src/exchange/assignment/assignment';
import { fileStem } from '../../src/exchange/file-name';
import { makeLink } from '../../src/exchange/link/make-link';
import { readLink } from '../../src/exchange/link/read-link';
import { writeMidi } from '../../src/exchange/midi/write-midi';
import { writeMusicXml } from '../../src/exchange/musicxml/write-musicxml';
import { contentsPage } from '../../src/exchange/pack/contents-page';
import { type PackOrder, packFiles } from '../../src/exchange/pack/pack-order';
import { readOutlineFont } from '../../src/exchange/pdf/outline-font';
import { writePdf } from '../../src/exchange/pdf/write-pdf';
import { PLAIN_LEVELS } from '../../src/exchange/wav/play-along';
import { readChart } from '../../src/music/chart/read';
import { arrange, type Score } from '../../src/music/score';
import { JOURNAL_COLUMNS, journalCsv } from '../../src/practice/journal-csv';
import { chartFileName } from '../../src/state/file-name';
import { halfNotesPerMinute } from '../../src/vocabulary';
import { HOSTILE_STRINGS } from './hostile-strings';
import { readPdf } from './pdf/read-pdf';

function scoreTitled(title: string): Score {
  const chart = readChart('title: Low Tide\nkey: F\n[A]\n| Gm7 | C7 | F6 | D7 |\n');
  if (!chart.ok) throw new Error('the chart of the test has a fault');
  return { ...arrange(chart.value, {}), title };
}

/** Elements of a document in order, each with the text directly in it; throws when the document is not well-formed. */
function elementsOf(xml: string): { readonly name: string; text: string }[] {
  const elements: { name: string; text: string }[] = [];
  const open: { name: string; text: string }[] = [];
  const parser = new SaxesParser();
  parser.on('opentag', ({ name }) => {
    const element = { name, text: '' };
    elements.push(element);
    open.push(element);
  });
  parser.on('text', (text) => {
    const inner = open.at(-1);
    if (inner) inner.text += text;
  });
  parser.on('closetag', () => void open.pop());
  parser.on('error', (error) => {
    throw error;
  });
  parser.write(xml).close();
  return elements;
}
const names = (elements: readonly { readonly name: string }[]) => elements.map(({ name }) => name);

/** Cells of a file of comma-separated values, by the grammar of RFC 4180. */
function cellsOf(csv: string): string[][] {
  const rows: string[][] = [[]];
  for (const [, quoted, plain, end] of csv.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/g)) {
    rows.at(-1)?.push(quoted === undefined ? (plain ?? '') : quoted.replaceAll('""', '"'));
    if (end === '\r\n') rows.push([]);
  }
  return rows.filter((row) => row.length > 1);
}

/** What XML cannot hold is left out (XML 1.0, production 2). */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what XML forbids
const inXml = (text: string) => text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]|[\ud800-\udfff]/gu, '');
const SAFE_NAME = /^[A-Za-z0-9][A-Za-z0-9_-]*(\.[a-z]+)*$/;
const packOf = (title: string): PackOrder => ({
  scores: [scoreTitled(title)],
  sounding: [scoreTitled(title)],
  tempi: [halfNotesPerMinute(80)],
  kinds: ['sheet', 'midi', 'musicxml', 'wav'],
  playAlongs: ['full'],
  form: 'loop',
  levels: PLAIN_LEVELS,
  rate: 44_100,
  date: '2026-11-26',
});

describe.each(HOSTILE_STRINGS)('%j', (text) => {
  it('is one text in a MIDI file, and every chunk is as long as it says', () => {
    const plain = parseMidi(writeMidi(scoreTitled('Low Tide')));
    const file = parseMidi(writeMidi(scoreTitled(text)));
    expect(file.tracks.map((track) => track.length)).toEqual(plain.tracks.map((track) => track.length));
    for (const event of file.tracks.flat()) if ('text' in event) expect(event.text).toMatch(/^[ -~]*$/);
  });

  it('is one text in a MusicXML file, which has the elements of any other', () => {
    const elements = elementsOf(writeMusicXml(scoreTitled(text)));
    expect(names(elements)).toEqual(names(elementsOf(writeMusicXml(scoreTitled('Low Tide')))));
    expect(elements.find(({ name }) => name === 'work-title')?.text).toBe(inXml(text));
  });

  it('adds no tag to the contents page of a pack, and its files lie in the pack’s own folders', () => {
    const tags = (title: string) => {
      const order = packOf(title);
      return contentsPage(order, packFiles(order))
        .match(/<[a-z!/][^>]*>/gi)
        ?.map((tag) => tag.replace(/ href="[^"]*"/, ' href=""'));
    };
    expect(tags(text)).toEqual(tags('Low Tide'));
    for (const { name } of packFiles(packOf(text))) {
      expect(name.split('/')).toHaveLength(2);
      for (const part of name.split('/')) expect(part).toMatch(SAFE_NAME);
    }
  });

  it('gives file names that every system takes', () => {
    const title = text;
    for (const name of [
      `${fileStem(scoreTitled(text))}.mid`,
      chartFileName(title),
      assignmentFileName({ title, loop: null }),
      resultsFileName({ title, who: text }),
    ]) {
      expect(name).toMatch(SAFE_NAME);
      expect(name.length).toBeLessThan(160);
      // Names that one family of systems keeps for devices, whatever follows the first dot.
      expect(name).not.toMatch(/^(con|prn|aux|nul|com\d|lpt\d)\./i);
    }
  });

  it('is one cell of the journal’s table, and no spreadsheet takes it for a formula', () => {
    const note = { kind: 'note', at: 0, chart: 'own-1', title: text, text } as const;
    const headings = Object.fromEntries(JOURNAL_COLUMNS.map((column) => [column, column])) as Parameters<typeof journalCsv>[1];
    const [head, row] = cellsOf(journalCsv([note], headings, (plain) => plain));
    expect(head).toEqual([...JOURNAL_COLUMNS]);
    expect(row).toHaveLength(JOURNAL_COLUMNS.length);
    for (const cell of row ?? []) expect(cell).not.toMatch(/^\s*[=+\-@＝＋－＠]/u);
    expect([text, `'${text}`]).toContain(row?.at(-1));
  });

  it('is text and title of a PDF file, which has the objects of any other', () => {
    const bytes = readFileSync(
      'node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-500-normal.woff',
    );
    const font = readOutlineFont('text', bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer);
    const made = (words: string) => {
      const mark = {
        kind: 'text',
        text: words,
        fonts: ['text'],
        size: 12,
        x: 72,
        at: { baseline: 100 },
        width: null,
        ink: [0, 0, 0],
      } as const;
      return readPdf(writePdf([{ width: 595, height: 842, marks: [mark] }], new Map([['text', font]]), words));
    };
    const objects = [...made(text).objects.values()].map((object) => object.text).join('\n');
    expect(objects).not.toMatch(/\/(JS|JavaScript|OpenAction|AA|Launch|URI)\b/);
    const info = /\/Title <FEFF([0-9A-F]*)>/.exec(objects)?.[1] ?? '';
    expect(Buffer.from(info, 'hex').swap16().toString('utf16le')).toBe(text);
  });

  it('goes through a link and comes back the same', () => {
    const made = makeLink({ text: `title: ${text}\n[A]\n| C |\n`, settings: {}, note: text });
    if (!made.ok) throw new Error('the link is too long');
    const read = readLink(`#${made.value.replace(/^#/, '')}`);
    expect(read.ok && read.value.note).toBe(text);
  });

  it('in the place of a chord is a fault that quotes it, or a chord', () => {
    const read = readChart(`title: ${text}\nkey: F\n[A]\n| ${text.replaceAll(/\s/g, '')} | C7 |\n`);
    if (!read.ok) for (const fault of read.faults) expect(fault.expected).not.toBe('');
    else expect(read.value.title.length).toBeGreaterThan(0);
  });
});
