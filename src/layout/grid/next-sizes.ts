/** Sizes of the two forms of the next card, in the units of `frame.ts`. On a phone two panels share the width of one, so type is larger in units. */
export const NEXT_SIZES = {
  wide: { head: 36, chord: 44, chords: 50, count: 23, counts: 34, note: 27, notes: 35 },
  narrow: { head: 56, chord: 62, chords: 72, count: 40, counts: 58, note: 44, notes: 56 },
};

/** Height of the next card, heading included, in units of a panel that is as wide as half the card. */
export function nextHeight(narrow: boolean, enlarged: number): number {
  const { head, chords, counts, notes } = narrow ? NEXT_SIZES.narrow : NEXT_SIZES.wide;
  return (head + chords + counts + notes + NEXT_FOOT) * enlarged;
}

/** Room below its notes. */
export const NEXT_FOOT = 4;
