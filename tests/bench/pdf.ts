import { readFileSync } from 'node:fs';
import { type OutlineFont, readOutlineFont } from '../../src/exchange/pdf/outline-font';
import { writePdf } from '../../src/exchange/pdf/write-pdf';
import type { Ink, Mark, PageDrawing } from '../../src/layout/sheet/page-drawing';
import { seeded } from '../../src/practice/seeded';
import { mediansMs, overFloor, type Results } from './measure';

const PAGES = 12;
/** Marks of one page of a lesson sheet: about as many as a page with eight systems has. */
const WORDS = 250;
const OUTLINES = 900;
const BLACK: Ink = [0, 0, 0];

const font = (name: string, path: string): OutlineFont => {
  const bytes = readFileSync(`node_modules/${path}`);
  return readOutlineFont(name, bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer);
};

/** A page of words and outlines in places that a seed gives: lines, stems, and note heads of four curves. */
function page(random: () => number): PageDrawing {
  const x = () => random() * 595;
  const y = () => random() * 842;
  const word = (): Mark => ({
    kind: 'text',
    text: ['Gm7', 'C7', 'F6/9', '2-side', 'mambo', 'bar 17'][Math.floor(random() * 6)] ?? '',
    fonts: ['text'],
    ...{ size: 9, x: x(), at: { baseline: y() }, width: null, ink: BLACK },
  });
  const head = (): Mark => {
    const [left, top] = [x(), y()];
    const curve = (n: number) => ['C', left + n, top, left + n, top + n, left, top + n] as const;
    return { kind: 'fill', path: [['M', left, top], curve(2), curve(3), curve(4), curve(5), ['Z']], ink: BLACK };
  };
  const marks = [...Array.from({ length: WORDS }, word), ...Array.from({ length: OUTLINES }, head)];
  return { width: 595.28, height: 841.89, marks };
}

/** Twelve pages of drawings as a PDF file, compression included. The floor writes the same drawings as JSON. */
export function measurePdf(): Results {
  const random = seeded(4);
  const pages = Array.from({ length: PAGES }, () => page(random));
  const fonts = new Map([
    ['text', font('text', '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-500-normal.woff')],
  ]);
  const [pdfMs, jsonMs] = mediansMs(
    () => writePdf(pages, fonts, 'Last Ferry'),
    () => JSON.stringify(pages),
    15,
  );
  return {
    writePdf12PagesMs: overFloor(pdfMs, jsonMs, 'JSON.stringify of the same drawings'),
    pdfBytes: writePdf(pages, fonts, 'Last Ferry').length,
  };
}
