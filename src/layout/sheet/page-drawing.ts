/*
 * A printed page as a list of marks, whoever draws it: plain data that can be handed to a worker. All lengths are PostScript points
 * (1/72 inch) from the top left corner, y downwards; colours are red, green and blue from 0 to 1.
 */

/** A colour of ink. */
export type Ink = readonly [red: number, green: number, blue: number];

/** One piece of an outline: move, line, cubic curve, close. */
export type Segment =
  | readonly ['M' | 'L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

/** One mark on the page. */
export type Mark =
  /** Rows of greys from the top, 0 black to 255 white, `columns` in each. */
  | {
      readonly kind: 'picture';
      readonly left: number;
      readonly top: number;
      readonly width: number;
      readonly height: number;
      readonly columns: number;
      readonly greys: Uint8Array;
    }
  | { readonly kind: 'fill'; readonly path: readonly Segment[]; readonly ink: Ink }
  | {
      readonly kind: 'stroke';
      readonly path: readonly Segment[];
      readonly width: number;
      readonly ink: Ink;
      readonly dash: readonly number[];
    }
  | {
      readonly kind: 'text';
      readonly text: string;
      /** Names of fonts, best first; a character takes the first that has it. */
      readonly fonts: readonly string[];
      readonly size: number;
      readonly x: number;
      /** Where the letters stand: their baseline, or the box (top and height) of a line whose font says where that lies. */
      readonly at: { readonly baseline: number } | { readonly top: number; readonly height: number };
      /** Width that the text takes on the page, to which it is fitted; null to leave it as the font sets it. */
      readonly width: number | null;
      readonly ink: Ink;
    };

/** One page. */
export interface PageDrawing {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}

/** Points in a millimetre. */
export const POINTS_PER_MM = 72 / 25.4;
