import { create } from 'qrcode';

/** A QR code as one path: `size` is the side of its square in modules, its light border of four modules (ISO/IEC 18004) included. */
export interface QrPath {
  readonly size: number;
  /** Path data of the dark modules, one unit a module. */
  readonly path: string;
}

/** Light modules around a code, as the standard asks for. */
const BORDER = 4;
/** Codes of more characters have modules too small to be read from a screen on a music stand. */
export const LONGEST_CODE = 1400;

/** The QR code of a text, or null for one that is too long to be read from a screen. */
export function qrPath(text: string): QrPath | null {
  if (text.length > LONGEST_CODE) return null;
  const { size, data } = create(text, { errorCorrectionLevel: text.length > 600 ? 'L' : 'M' }).modules;
  const runs: string[] = [];
  for (let row = 0; row < size; row += 1) {
    let from = -1;
    for (let column = 0; column <= size; column += 1) {
      const dark = column < size && data[row * size + column] === 1;
      if (dark && from < 0) from = column;
      if (!dark && from >= 0) {
        runs.push(`M${from + BORDER} ${row + BORDER}h${column - from}v1h${from - column}z`);
        from = -1;
      }
    }
  }
  return { size: size + 2 * BORDER, path: runs.join('') };
}
