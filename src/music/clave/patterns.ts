import { assert, type Clave, type ClaveKind, type Direction, type Side, type StrokeReason } from '../../vocabulary';

/**
 * The claves, each stored once with the 3-side first; the other direction is the same cycle entered half way.
 * Positions are steps of the cycle from 0, never text such as "2&": the same clave is counted in three ways.
 */

/** One row of the clave table. */
export interface ClaveRow {
  readonly kind: ClaveKind;
  /** Steps in a cycle: 16 in 4/4, 12 in 6/8. */
  readonly cycle: 16 | 12;
  /** What sounds, as steps from the start of the 3-side, ascending. */
  readonly threeTwo: readonly number[];
  /** The five strokes that carry the names first to fifth; the bell sounds two more between them. */
  readonly named: readonly number[];
  readonly source: string;
}

/**
 * The claves that can sound. Published: son in R. Santos, "Patrones de songo y salsa" (2009), and G. Toussaint, "The Rhythm that
 * Conquered the World" (Percussive Notes); rumba in the same and Toussaint, The Geometry of Musical Rhythm (2013), fig. 7.3; the
 * seven-stroke bell on a timbales pattern sheet ("Basic Patterns"); its five named strokes are the rumba-type clave in 6/8 (Drum Dojo, "Rumba Clave").
 */
export const CLAVES: Readonly<Record<ClaveKind, ClaveRow>> = {
  son: { kind: 'son', cycle: 16, threeTwo: [0, 3, 6, 10, 12], named: [0, 3, 6, 10, 12], source: 'published: Santos 2009; Toussaint 2011' },
  rumba: {
    kind: 'rumba',
    cycle: 16,
    threeTwo: [0, 3, 7, 10, 12],
    named: [0, 3, 7, 10, 12],
    source: 'published: Santos 2009; Toussaint 2013',
  },
  bembe: {
    kind: 'bembe',
    cycle: 12,
    threeTwo: [0, 2, 4, 5, 7, 9, 11],
    named: [0, 2, 5, 7, 9],
    source: 'published: timbales pattern sheet; Drum Dojo',
  },
};

/** Steps in one cycle of a clave: 16 for son and rumba, 12 for the bell. Example: `cycleSteps('bembe')` is 12. */
export const cycleSteps = (kind: ClaveKind): 16 | 12 => CLAVES[kind].cycle;

/** The steps a clave sounds on, from the start of its first side, ascending. Example: son 2-3 is 2 4 8 11 14. */
export function claveSteps(clave: Clave): readonly number[] {
  const { cycle, threeTwo } = CLAVES[clave.kind];
  return clave.direction === '3-2' ? threeTwo : exchangeSides(threeTwo, cycle);
}

/** The same strokes with the sides exchanged: every step half a cycle on, ascending. */
export const exchangeSides = (steps: readonly number[], cycle: number): readonly number[] =>
  steps.map((step) => (step + cycle / 2) % cycle).sort((a, b) => a - b);

/** A list turned so that it starts at index `by` (negative turns the other way). Example: `rotate([1, 2, 3], 1)` is 2 3 1. */
export function rotate<Item>(items: readonly Item[], by: number): readonly Item[] {
  if (items.length === 0) return [];
  const start = ((by % items.length) + items.length) % items.length;
  return [...items.slice(start), ...items.slice(0, start)];
}

/** Which side of the clave a step of the cycle belongs to; steps beyond the cycle wrap. */
export function sideAtStep(clave: Clave, step: number): Side {
  const cycle = cycleSteps(clave.kind);
  const inFirstHalf = wrap(step, cycle) < cycle / 2;
  return inFirstHalf === (clave.direction === '2-3') ? 2 : 3;
}

const STROKE_NAMES = ['first', 'second', 'third', 'fourth', 'fifth'] as const;

/**
 * Which of the five clave strokes falls on a step of the cycle, counted from the first stroke of the 3-side (bombo is the second,
 * ponche the third), or null. Example: `strokeName('son', '2-3', 11)` is `second`.
 */
export function strokeName(kind: ClaveKind, direction: Direction, step: number): StrokeReason['claveStroke'] {
  const { cycle, named } = CLAVES[kind];
  const fromThreeSide = wrap(step + (direction === '3-2' ? 0 : cycle / 2), cycle);
  return STROKE_NAMES[named.indexOf(fromThreeSide)] ?? null;
}

const wrap = (step: number, cycle: number): number => ((step % cycle) + cycle) % cycle;

/** A grid of strokes as text, its two sides apart: `..x.x... x..x..x.`. One boolean a step. */
export function gridText(strokes: readonly boolean[]): string {
  const text = strokes.map((sounds) => (sounds ? 'x' : '.')).join('');
  assert(text.length % 2 === 0, `a grid has two sides of equal length, got ${text.length} steps`);
  return `${text.slice(0, text.length / 2)} ${text.slice(text.length / 2)}`;
}

/** Strokes by step as one boolean a step. Throws on a step outside the cycle. */
export function gridOfSteps(steps: readonly number[], cycle: number): readonly boolean[] {
  for (const step of steps) assert(Number.isInteger(step) && step >= 0 && step < cycle, `a step must be 0 to ${cycle - 1}, got ${step}`);
  return Array.from({ length: cycle }, (_, step) => steps.includes(step));
}

/** Indexes of the strokes of a grid, ascending. */
export const stepsOfGrid = (grid: readonly boolean[]): readonly number[] => grid.flatMap((sounds, step) => (sounds ? [step] : []));
