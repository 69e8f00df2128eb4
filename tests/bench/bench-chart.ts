/** Charts for the bench: seeded, so that every run measures the same music. */

/** Four-bar progressions of dance and Latin jazz practice, as written in D; each line is a phrase. */
const PHRASES = [
  'Em7 | A7 | D6 | B7b9',
  'Dm6 | Gm6 A7 | Dm6 | D7',
  'Gm7 C7 | Fmaj7 | Em7b5 A7 | Dm6',
  'D6 G6 | A7 G6 | D6 G6 | A7',
  'F#m7 B7 | Em7 A7 | D6 | %',
  'Bm7 | E7 | Em7 A7 | D6',
] as const;

/** The seed of all charts here. */
export const BENCH_SEED = 20_260_101;

/** A small linear congruential generator; the multiplier and increment of Numerical Recipes. */
function* numbers(seed: number): Generator<number, never> {
  let state = seed >>> 0;
  for (;;) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    yield state;
  }
}

/** The text of a chart of `bars` bars (a multiple of 4) in one section, phrases drawn by `seed`. */
export function benchChart(bars: number, seed: number): string {
  const draw = numbers(seed);
  const phrases = Array.from({ length: bars / 4 }, () => PHRASES[(draw.next().value >>> 16) % PHRASES.length]);
  return [
    'title: Measured Crossing',
    'key: D',
    'clave: 2-3 son',
    'tempo: half = 92',
    '',
    '[A]',
    ...phrases.map((phrase) => `| ${phrase} |`),
    '',
  ].join('\n');
}
