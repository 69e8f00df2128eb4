/**
 * Lays out a line of type that may hold ♭ and ♯. The text face has no accidentals, and fallback faces set them at any width
 * and weight, so they are drawn by us: a line is cut into runs, each with its own place.
 */

/** A piece of a line: plain text, or an accidental to be drawn. `x` counts from the start of the line. */
export interface TypeRun {
  readonly kind: 'text' | 'flat' | 'sharp';
  readonly text: string;
  readonly x: number;
}

/** A line of type: its pieces and its width. */
export interface TypeLine {
  readonly runs: readonly TypeRun[];
  readonly width: number;
}

/**
 * Advance widths in thousandths of the type size: Atkinson Hyperlegible Next at weight 750, measured with canvas `measureText`
 * in Chromium. Whatever is not listed counts as wide as a digit.
 */
const ADVANCE: Readonly<Record<string, number>> = {
  ' ': 320,
  '#': 791,
  '&': 724,
  '(': 343,
  ')': 343,
  '+': 592,
  ',': 285,
  '-': 375,
  '.': 286,
  '/': 452,
  '·': 306,
  '°': 404,
  Δ: 627,
  ø: 582,
  '0': 662,
  '1': 448,
  '2': 586,
  '3': 605,
  '4': 626,
  '5': 612,
  '6': 632,
  '7': 543,
  '8': 626,
  '9': 565,
  A: 690,
  B: 650,
  C: 661,
  D: 693,
  E: 604,
  F: 569,
  G: 724,
  H: 703,
  I: 432,
  J: 572,
  K: 671,
  L: 554,
  M: 866,
  N: 723,
  O: 754,
  P: 637,
  Q: 764,
  R: 658,
  S: 614,
  T: 618,
  U: 685,
  V: 656,
  W: 893,
  X: 699,
  Y: 667,
  Z: 621,
  a: 558,
  b: 603,
  c: 516,
  d: 603,
  e: 569,
  f: 377,
  g: 601,
  h: 576,
  i: 311,
  j: 262,
  k: 570,
  l: 331,
  m: 890,
  n: 576,
  o: 582,
  p: 603,
  q: 605,
  r: 382,
  s: 517,
  t: 387,
  u: 573,
  v: 546,
  w: 753,
  x: 553,
  y: 538,
  z: 516,
};
const UNKNOWN = 626;
/** Widths of our own accidentals, side bearings included, in thousandths. */
const ACCIDENTAL = { flat: 430, sharp: 520 } as const;

/** A line at a type size, in the same unit. Any ♭ or ♯ becomes an accidental to be drawn. */
export function typeLine(text: string, size: number): TypeLine {
  const runs: TypeRun[] = [];
  let x = 0;
  for (const piece of text.split(/([♭♯])/).filter((part) => part !== '')) {
    const kind = piece === '♭' ? 'flat' : piece === '♯' ? 'sharp' : 'text';
    runs.push({ kind, text: piece, x });
    x += (kind === 'text' ? widthOf(piece) : ACCIDENTAL[kind]) * (size / 1000);
  }
  return { runs, width: x };
}

/** The same line made smaller until it fits, down to `least`. Returns the size used with it. */
export function fittedLine(text: string, size: number, room: number, least: number): TypeLine & { readonly size: number } {
  const natural = typeLine(text, size);
  const fitted = natural.width <= room ? size : Math.max(least, (size * room) / natural.width);
  return { ...typeLine(text, fitted), size: fitted };
}

const widthOf = (text: string): number => [...text].reduce((sum, letter) => sum + (ADVANCE[letter] ?? UNKNOWN), 0);
