import { unfold } from '../../src/music/chart/unfold';
import type { Layers } from '../../src/music/harmony/cheapest-path';
import { harmonicTimeline } from '../../src/music/harmony/timeline';
import { plainSearch } from '../../src/music/montuno/figure';
import type { Shape } from '../../src/music/montuno/shapes';
import { figureOfBars } from '../../src/music/score-bars';
import { styleOf } from '../../src/music/styles/styles';
import type { Direction, Level } from '../../src/vocabulary';
import { chartOf } from '../music/chart/chart-of';

/** A loop of one clave cycle, small enough that every way through it can be tried. */
export interface SmallLoop {
  readonly bars: string;
  readonly key: string;
  readonly direction: Direction;
  readonly level: Level;
}

const CHORDS = [
  ['D', 'Em7 | A7'],
  ['D', 'A7 | D6'],
  ['D', 'Gmaj7 | D6'],
  ['Dm', 'Dm6 | A7'],
  ['Dm', 'Em7b5 | A7'],
  ['Bb', 'Gm7 C7 | F6'],
  ['Eb', 'Ab6 | Bb9'],
  ['F', 'C7#9 | Fm6'],
  ['G', 'G7 | G7'],
  ['Am', 'Am | Am'],
] as const;

/** Loops of one to three chords, major and minor, plain and with a moving line, in both directions. */
export const SMALL_LOOPS: readonly SmallLoop[] = (['2-3', '3-2'] as const).flatMap((direction) =>
  ([2, 3, 6] as const).flatMap((level) => CHORDS.map(([key, bars]) => ({ bars, key, direction, level }))),
);

/** What the program searches for a loop: the shapes of each hand position and their costs, as `arrange` with no other choices makes them. */
export function searchOf({ bars, key, direction, level }: SmallLoop): Layers<Shape> {
  const chart = chartOf(`title: Small Basin\nkey: ${key}\nclave: ${direction} son\ntempo: half = 90\n\n[A]\n| ${bars} |\n`);
  const form = unfold(chart, { pickup: false, loops: true });
  const timeline = harmonicTimeline(form, { fromBar: 0, toBar: form.bars.length, closed: true });
  const barFigure = figureOfBars(form, { level }, (bar) => styleOf(bar.style), direction);
  return plainSearch(timeline, { barFigure, colour: styleOf(chart.style).colour });
}

/** How many ways lead through a search. */
export const waysThrough = ({ layers }: Layers<Shape>): number => layers.reduce((product, layer) => product * layer.length, 1);

/** The least cost of all ways, adding up every one of them from its beginning: no bound, no memory, nothing shared with the program's search. */
export function everyWay({ layers, cost, step, closed }: Layers<Shape>): number {
  const at = layers.map(() => 0);
  let least = Number.POSITIVE_INFINITY;
  for (;;) {
    let sum = 0;
    let before: Shape | undefined;
    for (const [layer, index] of at.entries()) {
      const shape = layers[layer]?.[index] as Shape;
      sum += cost(shape, layer) + (before ? step(before, shape) : 0);
      before = shape;
    }
    if (closed) sum += step(before as Shape, layers[0]?.[at[0] ?? 0] as Shape);
    least = Math.min(least, sum);
    let turning = at.length - 1;
    while (turning >= 0 && (at[turning] ?? 0) + 1 === layers[turning]?.length) at[turning--] = 0;
    if (turning < 0) return least;
    at[turning] = (at[turning] ?? 0) + 1;
  }
}
