import { inflateSync } from 'node:zlib';

/** One object of a PDF file, as it stands behind its number: the dictionary's text, and the unpacked stream if there is one. */
export interface ReadObject {
  readonly text: string;
  readonly stream: string | null;
}

/** Reads a PDF by its cross-reference table (ISO 32000-1, clause 7.5.4), for tests: nothing of the writer is used. Throws where an offset is wrong. */
export function readPdf(bytes: Uint8Array): { readonly objects: ReadonlyMap<number, ReadObject>; readonly trailer: string } {
  const text = Buffer.from(bytes).toString('latin1');
  const at = Number(/startxref\n(\d+)\n%%EOF\n$/.exec(text)?.[1]);
  if (!text.startsWith('%PDF-1.') || !text.slice(at).startsWith('xref\n')) throw new Error('no cross-reference table where it should be');
  const [, count = '0'] = /^xref\n0 (\d+)\n/.exec(text.slice(at)) ?? [];
  const rows = text.slice(text.indexOf('\n', at + 5) + 1).match(/\d{10} \d{5} [nf] \n/g) ?? [];
  if (rows.length < Number(count)) throw new Error('the cross-reference table is short');
  const objects = new Map<number, ReadObject>();
  for (let number = 1; number < Number(count); number += 1) {
    const offset = Number(rows[number]?.slice(0, 10));
    const head = `${number} 0 obj\n`;
    if (!text.startsWith(head, offset)) throw new Error(`object ${number} is not at ${offset}`);
    const body = text.slice(offset + head.length, text.indexOf('\nendobj', offset));
    const length = /\/Length (\d+)/.exec(body)?.[1];
    const start = body.indexOf('\nstream\n');
    const packed = start < 0 ? null : bytes.subarray(offset + head.length + start + 8, offset + head.length + start + 8 + Number(length));
    objects.set(number, { text: body, stream: packed && inflateSync(packed).toString('latin1') });
  }
  return { objects, trailer: text.slice(text.lastIndexOf('trailer')) };
}

/** Every character that the pages show, through the fonts' own tables back to text, in the order in which it is drawn. */
export function shownText(bytes: Uint8Array): string {
  const { objects } = readPdf(bytes);
  const all = [...objects.values()];
  const fonts = new Map<string, Map<string, string>>();
  for (const [, name = '', number = ''] of (all.find(({ text }) => text.startsWith('<< /Font'))?.text ?? '').matchAll(
    /\/(F\d+) (\d+) 0 R/g,
  )) {
    const unicode = Number(/\/ToUnicode (\d+)/.exec(objects.get(Number(number))?.text ?? '')?.[1]);
    const pairs = (objects.get(unicode)?.stream ?? '').matchAll(/<(..)> <((?:....)+)>\n?/g);
    fonts.set(name, new Map([...pairs].map(([, code = '', units = '']) => [code.toLowerCase(), unitsToText(units)])));
  }
  const pages = all.flatMap(({ text }) => (/\/Type \/Page /.test(text) ? [Number(/\/Contents (\d+)/.exec(text)?.[1])] : []));
  return pages
    .flatMap((page) => [...(objects.get(page)?.stream ?? '').matchAll(/\/(F\d+) [\d.]+ Tf <([0-9a-f]+)>/g)])
    .map(([, font = '', codes = '']) => (codes.match(/../g) ?? []).map((code) => fonts.get(font)?.get(code) ?? '?').join(''))
    .join(' ');
}

const unitsToText = (units: string): string =>
  String.fromCharCode(...(units.match(/..../g) ?? []).map((unit) => Number.parseInt(unit, 16)));
