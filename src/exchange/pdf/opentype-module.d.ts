/** The part of opentype.js that is used; its own module has no types, and its main file cannot be imported by name in Node. */
declare module 'opentype.js/dist/opentype.mjs' {
  export interface PathCommand {
    readonly type: 'M' | 'L' | 'C' | 'Q' | 'Z';
    readonly x: number;
    readonly y: number;
    readonly x1: number;
    readonly y1: number;
    readonly x2: number;
    readonly y2: number;
  }
  export interface Glyph {
    readonly index: number;
    readonly advanceWidth?: number;
    readonly path: { readonly commands: readonly PathCommand[] };
  }
  export interface Font {
    readonly unitsPerEm: number;
    readonly ascender: number;
    readonly descender: number;
    readonly names: unknown;
    charToGlyph(char: string): Glyph;
    getKerningValue(left: Glyph, right: Glyph): number;
  }
  export function parse(buffer: ArrayBuffer): Font;
}
