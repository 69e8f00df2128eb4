import type { Segment } from '../../layout/sheet/page-drawing';
import type { OutlineFont, OutlineGlyph } from './outline-font';
import { type PdfObjects, pdfNumber } from './pdf-objects';

/*
 * Fonts of a file, made of the glyphs that its pages use: each glyph is its own small drawing (a Type 3 font, ISO 32000-1 clause
 * 9.6.5), so any font prints as it is, music and letters alike, and the text can still be searched and copied (ToUnicode).
 */

/** Codes in one font of a PDF file. */
const CODES = 256;

interface Used {
  readonly char: string;
  readonly glyph: OutlineGlyph;
}

/** A glyph as the file names it: which font resource, and the code in it. */
export interface FontCode {
  readonly resource: string;
  readonly code: number;
}

/** Collects glyphs while pages are written, then writes the fonts. */
export class GlyphFonts {
  readonly #sets: { readonly font: OutlineFont; readonly used: Used[]; readonly codes: Map<string, FontCode> }[] = [];

  /** The code of a glyph; the same character gets the same code in the whole file. */
  codeOf(font: OutlineFont, char: string, glyph: OutlineGlyph): FontCode {
    for (const set of this.#sets) {
      const known = set.font === font ? set.codes.get(char) : undefined;
      if (known !== undefined) return known;
    }
    let set = this.#sets.findLast((candidate) => candidate.font === font && candidate.used.length < CODES);
    if (set === undefined) {
      set = { font, used: [], codes: new Map() };
      this.#sets.push(set);
    }
    const code = { resource: `F${this.#sets.indexOf(set)}`, code: set.used.push({ char, glyph }) - 1 };
    set.codes.set(char, code);
    return code;
  }

  /** Writes the fonts; returns the entries of the pages' font dictionary. */
  write(objects: PdfObjects): string {
    return this.#sets.map(({ font, used }, index) => `/F${index} ${writeFont(font, used, objects)} 0 R`).join(' ');
  }
}

function writeFont(font: OutlineFont, used: readonly Used[], objects: PdfObjects): number {
  const scale = pdfNumber(1 / font.unitsPerEm);
  const procedures = used.map(({ glyph }, code) => `/g${code} ${objects.stream(procedure(glyph))} 0 R`);
  const names = used.map((_, code) => `/g${code}`);
  const box = boxOf(used.flatMap(({ glyph }) => glyph.outline));
  const unicode = objects.stream(toUnicode(used));
  const widths = used.map(({ glyph }) => pdfNumber(glyph.advance));
  return objects.add(
    `<< /Type /Font /Subtype /Type3 /Name /${font.name.replace(/[^A-Za-z0-9]/g, '')} /FontBBox [${box.map(pdfNumber).join(' ')}] ` +
      `/FontMatrix [${scale} 0 0 ${scale} 0 0] /CharProcs << ${procedures.join(' ')} >> ` +
      `/Encoding << /Type /Encoding /Differences [0 ${names.join(' ')}] >> /FirstChar 0 /LastChar ${used.length - 1} ` +
      `/Widths [${widths.join(' ')}] /Resources << >> /ToUnicode ${unicode} 0 R >>`,
  );
}

function procedure({ advance, outline }: OutlineGlyph): string {
  const box = boxOf(outline).map(pdfNumber).join(' ');
  return `${pdfNumber(advance)} 0 ${box} d1\n${outlineText(outline)}${outline.length > 0 ? 'f' : ''}`;
}

/** The operators of an outline. */
export function outlineText(outline: readonly Segment[]): string {
  const operator = { M: 'm', L: 'l', C: 'c', Z: 'h' } as const;
  return outline.map(([kind, ...numbers]) => `${[...numbers.map(pdfNumber), operator[kind]].join(' ')}\n`).join('');
}

function boxOf(outline: readonly Segment[]): [number, number, number, number] {
  const numbers = outline.flatMap(([, ...rest]) => rest as number[]);
  const xs = numbers.filter((_, index) => index % 2 === 0);
  const ys = numbers.filter((_, index) => index % 2 === 1);
  const least = (values: readonly number[]) => values.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY);
  const most = (values: readonly number[]) => values.reduce((high, value) => Math.max(high, value), Number.NEGATIVE_INFINITY);
  return xs.length === 0 ? [0, 0, 0, 0] : [least(xs), least(ys), most(xs), most(ys)];
}

function toUnicode(used: readonly Used[]): string {
  const hex = (value: number, digits: number) => value.toString(16).toUpperCase().padStart(digits, '0');
  const rows = used.map(({ char }, code) => {
    const units = Array.from({ length: char.length }, (_, index) => hex(char.charCodeAt(index), 4));
    return `<${hex(code, 2)}> <${units.join('')}>`;
  });
  const groups: string[] = [];
  for (let at = 0; at < rows.length; at += 100) {
    const group = rows.slice(at, at + 100);
    groups.push(`${group.length} beginbfchar\n${group.join('\n')}\nendbfchar`);
  }
  return [
    '/CIDInit /ProcSet findresource begin 12 dict begin begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def /CMapType 2 def',
    '1 begincodespacerange\n<00> <FF>\nendcodespacerange',
    ...groups,
    'endcmap CMapName currentdict /CMap defineresource pop end end',
  ].join('\n');
}
