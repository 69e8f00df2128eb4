import { zlibSync } from 'fflate';

/** Collects the numbered objects of a PDF file and joins them. Source of the format: ISO 32000-1:2008, clause 7.5. */
export class PdfObjects {
  readonly #bodies: (Uint8Array | null)[] = [];

  /** A number for an object that is written later, so that others can name it. */
  reserve(): number {
    return this.#bodies.push(null);
  }

  /** Writes an object under a reserved number, or under a new one; returns its number. */
  add(body: string, number = this.reserve()): number {
    this.#bodies[number - 1] = latin(body);
    return number;
  }

  /** Writes a compressed stream; returns its number. `entries` go into its dictionary. */
  stream(content: string | Uint8Array, entries = '', number = this.reserve()): number {
    const packed = zlibSync(typeof content === 'string' ? latin(content) : content);
    const head = latin(`<< ${entries} /Filter /FlateDecode /Length ${packed.length} >>\nstream\n`);
    this.#bodies[number - 1] = joined([head, packed, latin('\nendstream')]);
    return number;
  }

  /** The whole file. Throws when a reserved object was never written. */
  file(root: number, info: number): Uint8Array<ArrayBuffer> {
    // Four bytes above 127 in a comment tell programs that the file is not text.
    const parts: Uint8Array[] = [latin('%PDF-1.7\n%\xe2\xe3\xcf\xd3\n')];
    let at = parts[0]?.length ?? 0;
    const offsets = this.#bodies.map((body, index) => {
      if (body === null) throw new Error(`PDF object ${index + 1} was named and never written`);
      const part = joined([latin(`${index + 1} 0 obj\n`), body, latin('\nendobj\n')]);
      const offset = at;
      parts.push(part);
      at += part.length;
      return offset;
    });
    const rows = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`);
    const size = offsets.length + 1;
    parts.push(
      latin(`xref\n0 ${size}\n0000000000 65535 f \n${rows.join('')}`),
      latin(`trailer\n<< /Size ${size} /Root ${root} 0 R /Info ${info} 0 R >>\nstartxref\n${at}\n%%EOF\n`),
    );
    return joined(parts);
  }
}

/** A PDF text string of any characters. */
export function textString(text: string): string {
  const units = Array.from({ length: text.length }, (_, index) => text.charCodeAt(index).toString(16).padStart(4, '0'));
  return `<FEFF${units.join('').toUpperCase()}>`;
}

/** A number as PDF writes it: at most four places, no exponent. */
export const pdfNumber = (value: number): string => String(Number(value.toFixed(4)) || 0);

const latin = (text: string): Uint8Array => Uint8Array.from(text, (sign) => sign.charCodeAt(0));

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}
