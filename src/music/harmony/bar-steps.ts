import type { Side } from '../../vocabulary';
import type { SoundingBar } from '../chart/chart';

/** Steps in a side of the clave: 8, or 6 in 6/8, whose bars are 1440 or 720 ticks long. */
export const sideSteps = (bar: SoundingBar): 8 | 6 => (bar.ticks % 720 === 0 && bar.ticks % 960 !== 0 ? 6 : 8);

/** Where in its side of the clave a step of a bar falls, from 0. */
export const stepInSide = (bar: SoundingBar, step: number): number => ((bar.cycleStep % sideSteps(bar)) + step) % sideSteps(bar);

/** The side that a step of a bar belongs to; a bar that begins in the middle of a side crosses to the other. */
export function sideOfStep(bar: SoundingBar, step: number): Side {
  const half = sideSteps(bar);
  const crossed = Math.floor(((bar.cycleStep % half) + step) / half) % 2 === 1;
  return crossed ? (bar.side === 2 ? 3 : 2) : bar.side;
}

/** The step of the clave cycle counted from the start of the 3-side, whatever the direction. */
export const stepFromThreeSide = (bar: SoundingBar, step: number): number =>
  stepInSide(bar, step) + (sideOfStep(bar, step) === 3 ? 0 : sideSteps(bar));
