import { parse } from 'opentype.js/dist/opentype.mjs';
import type { Segment } from '../../layout/sheet/page-drawing';

/** A font as outlines: what a page needs of it. */
export interface OutlineFont {
  readonly name: string;
  readonly unitsPerEm: number;
  /** Above and (negative) below the baseline, in units of the font. */
  readonly ascender: number;
  readonly descender: number;
  /** The glyph of one character, or null when the font has none. */
  readonly glyph: (char: string) => OutlineGlyph | null;
}

/** One glyph, in units of the font, y upwards. */
export interface OutlineGlyph {
  readonly index: number;
  readonly advance: number;
  readonly outline: readonly Segment[];
}

/** Reads a font file (OpenType, TrueType or WOFF 1). Throws on anything else. */
export function readOutlineFont(name: string, bytes: ArrayBuffer): OutlineFont {
  const font = parse(bytes);
  const known = new Map<string, OutlineGlyph | null>();
  const read = (char: string): OutlineGlyph | null => {
    const glyph = font.charToGlyph(char);
    if (glyph.index === 0) return null;
    let [atX, atY] = [0, 0];
    const outline = glyph.path.commands.map(({ type, x, y, x1, y1, x2, y2 }): Segment => {
      const [fromX, fromY] = [atX, atY];
      if (type !== 'Z') [atX, atY] = [x, y];
      if (type === 'C') return ['C', x1, y1, x2, y2, x, y];
      // A quadratic curve as a cubic one: exact, two thirds of the way to its point.
      const third = (from: number, to: number) => from + ((to - from) * 2) / 3;
      if (type === 'Q') return ['C', third(fromX, x1), third(fromY, y1), third(x, x1), third(y, y1), x, y];
      return type === 'Z' ? ['Z'] : [type, x, y];
    });
    return { index: glyph.index, advance: glyph.advanceWidth ?? 0, outline };
  };
  return {
    name,
    unitsPerEm: font.unitsPerEm,
    ascender: font.ascender,
    descender: font.descender,
    glyph(char) {
      const found = known.get(char);
      if (found !== undefined) return found;
      const glyph = read(char);
      known.set(char, glyph);
      return glyph;
    },
  };
}
