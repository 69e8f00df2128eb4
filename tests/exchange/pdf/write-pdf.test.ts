import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type OutlineFont, readOutlineFont } from '../../../src/exchange/pdf/outline-font';
import { writePdf } from '../../../src/exchange/pdf/write-pdf';
import type { Ink, Mark, PageDrawing } from '../../../src/layout/sheet/page-drawing';
import { readPdf, shownText } from './read-pdf';

const BLACK: Ink = [0, 0, 0];
const font = (name: string, path: string): OutlineFont => {
  const bytes = readFileSync(`node_modules/${path}`);
  return readOutlineFont(name, bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer);
};
const FONTS = new Map(
  [
    font('text', '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-500-normal.woff'),
    font('music', '@vexflow-fonts/bravura/bravura.otf'),
  ].map((made) => [made.name, made]),
);
const word = (text: string, more: Partial<Extract<Mark, { kind: 'text' }>> = {}): Mark => ({
  kind: 'text',
  text,
  fonts: ['text', 'music'],
  size: 12,
  x: 72,
  at: { baseline: 100 },
  width: null,
  ink: BLACK,
  ...more,
});
const page = (...marks: readonly Mark[]): PageDrawing => ({ width: 595.28, height: 841.89, marks });

describe('a PDF file', () => {
  test('is found whole through its cross-reference table: as many pages as drawings, their size, the title', () => {
    const { objects, trailer } = readPdf(writePdf([page(word('one')), page(word('two'))], FONTS, 'Última lancha (½)'));
    const pages = [...objects.values()].filter(({ text }) => text.includes('/Type /Page '));
    expect(pages).toHaveLength(2);
    for (const { text } of pages) expect(text).toContain('/MediaBox [0 0 595.28 841.89]');
    const info = objects.get(Number(/\/Info (\d+)/.exec(trailer)?.[1]))?.text ?? '';
    const hex = /\/Title <FEFF([0-9A-F]+)>/.exec(info)?.[1] ?? '';
    expect(Buffer.from(hex, 'hex').swap16().toString('utf16le')).toBe('Última lancha (½)');
  });

  test('keeps its text searchable, music included, and leaves out what no font has', () => {
    const noteheads = '\uE0A4'.repeat(2);
    expect(shownText(writePdf([page(word('B♭7(#11) ñandú'), word(noteheads), word('a\u4E2Db'))], FONTS, 't'))).toBe(
      `B ♭ 7(#11) ñandú ${noteheads} ab`.replace('B ♭ 7', FONTS.get('text')?.glyph('♭') ? 'B♭7' : 'B ♭ 7'),
    );
  });

  test('draws each glyph once, however often it is shown, each with its own outline', () => {
    const once = writePdf([page(word('abc'))], FONTS, 't').length;
    const often = writePdf([page(...Array.from({ length: 400 }, () => word('abc')))], FONTS, 't').length;
    expect(often - once).toBeLessThan(1500);
    const { objects } = readPdf(writePdf([page(word('l'))], FONTS, 't'));
    const procedure = [...objects.values()].find(({ stream }) => stream?.includes(' d1\n'))?.stream ?? '';
    expect(procedure).toMatch(/^\d+ 0 [\d. -]+ d1\n[\d.-]+ [\d.-]+ m\n[\s\S]* [lc]\n[\s\S]*f$/);
  });

  test('with more than 256 different characters takes another font for the rest', () => {
    const signs = Array.from({ length: 400 }, (_, at) => String.fromCharCode(0xe000 + at)).filter((sign) =>
      FONTS.get('music')?.glyph(sign),
    );
    expect(signs.length).toBeGreaterThan(256);
    expect(shownText(writePdf([page(word(signs.join(''), { fonts: ['music'] }))], FONTS, 't')).replace(' ', '')).toContain(
      signs.slice(0, 256).join(''),
    );
  });

  test('counts from the top, and fits a word to its place by a little at most', () => {
    const content = (mark: Mark): string => {
      const { objects } = readPdf(writePdf([page(mark)], FONTS, 't'));
      return [...objects.values()].find(({ stream }) => stream?.includes('BT') || stream?.includes(' m\n'))?.stream ?? '';
    };
    expect(content(word('x'))).toContain('72 741.89 Td');
    const line: Mark = {
      kind: 'stroke',
      path: [
        ['M', 10, 10],
        ['L', 20, 10],
      ],
      width: 0.5,
      ink: [0.5, 0.5, 0.5],
      dash: [],
    };
    expect(content(line)).toBe('0.5 0.5 0.5 RG 0.5 w [] 0 d\n10 831.89 m\n20 831.89 l\nS\n');
    const natural = ((FONTS.get('text')?.glyph('x')?.advance ?? 0) / 1000) * 12;
    expect(content(word('x', { width: natural * 1.05 }))).toContain('105 Tz');
    expect(content(word('x', { width: natural * 3 }))).toContain('100 Tz');
  });

  test('holds a word that no font has as a picture in its place', () => {
    const greys = Uint8Array.of(0, 255, 128, 64, 32, 16);
    const { objects } = readPdf(
      writePdf([page({ kind: 'picture', left: 10, top: 20, width: 30, height: 12, columns: 3, greys })], FONTS, 't'),
    );
    const all = [...objects.values()];
    const picture = all.find(({ text }) => text.includes('/Subtype /Image'));
    expect(picture?.text).toContain('/Width 3 /Height 2');
    expect([...(picture?.stream ?? '')].map((sign) => sign.charCodeAt(0))).toEqual([...greys]);
    expect(all.some(({ stream }) => stream === 'q 30 0 0 12 10 809.89 cm /P0 Do Q\n')).toBe(true);
  });
});
