import type { PartName } from './performance';

/*
 * Feel says how far off its notated place each stroke sounds, by part and by step of the clave cycle. Straight is the
 * only feel for now: invented unevenness teaches nothing. A measured feel is another `Feel` with a table of offsets.
 */

/** Offsets in ticks by part and step of the clave cycle; parts and steps that are missing are straight. */
export interface Feel {
  readonly name: string;
  readonly offsets: Partial<Readonly<Record<PartName, Readonly<Record<number, number>>>>>;
}

/** Everything exactly where it is written. */
export const STRAIGHT: Feel = { name: 'straight', offsets: {} };

/** Ticks (negative: early) by which a stroke of `part` on step `cycleStep` of the clave cycle is off its place. */
export function offsetTicks(feel: Feel, part: PartName, cycleStep: number): number {
  return Math.round(feel.offsets[part]?.[cycleStep] ?? 0);
}
