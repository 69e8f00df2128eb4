import type { Clave, Side } from '../vocabulary';
import { barName, sideName } from './grid';

/** Words of the staff view. */
export const STAFF_WORDS = {
  failed: 'The music fonts could not be loaded, so the staff cannot be drawn. Open this view again when there is a connection.',
  view: 'Staff',
  startAt: (bar: number, side: Side): string => `Start at ${barName(bar + 1)}, ${sideName(side)}`,
  /** Bars [from, to), counted from 0. */
  system: (from: number, to: number, chords: readonly string[]): string =>
    `${to - from === 1 ? barName(from + 1) : `bars ${from + 1} to ${to}`}: ${chords.join(', ')}`,
} as const;

/** A clave as it is printed in large type: `2-3 son`. */
export const directionWords = (clave: Clave): string => `${clave.direction} ${clave.kind}`;
