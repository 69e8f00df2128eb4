import { leastHeight, PANEL_WIDTH, SPARE } from '../../layout/grid/frame';
import type { BoardSize } from './use-board-size';

/** How the board's room is shared out. */
export interface BoardRoom {
  /** Panels one above the other. */
  readonly stacked: boolean;
  /** Height of one panel of the sounding card, in the units of `frame.ts`. */
  readonly nowUnits: number;
}

/** Below this width panels stack. */
const STACK_BELOW_PX = 700;
/** Heights in CSS px of what is around the sounding card; they match `practise.css`. */
const GAP_PX = 8;
/** Next card in units (heading and drawing), and the hand strip in px. */
const NEXT_UNITS = { wide: 128 + 38, enlarged: 160 + 48, narrow: 190 + 56 };
const STRIP_PX = { wide: 98, narrow: 70 };

/** Shares the height: the next card is whole, the strip has its place, the sounding card takes the rest, never less than it needs. */
export function boardRoom(size: BoardSize, strip: boolean): BoardRoom {
  const stacked = size.width < STACK_BELOW_PX;
  const kind = stacked ? 'narrow' : 'wide';
  const pairScale = size.width / (2 * PANEL_WIDTH);
  const scale = stacked ? size.width / PANEL_WIDTH : pairScale;
  const others = size.top + GAP_PX + NEXT_UNITS[kind] * pairScale + (strip ? STRIP_PX[kind] + GAP_PX : 0) + 2 * GAP_PX;
  const units = (size.height - others) / scale / (stacked ? 2 : 1);
  const larger = units - (NEXT_UNITS.enlarged - NEXT_UNITS.wide);
  if (!stacked && units >= SPARE.from) return { stacked, nowUnits: Math.round(larger >= SPARE.from ? larger : SPARE.from - 1) };
  return { stacked, nowUnits: Math.max(leastHeight(stacked), Math.round(units)) };
}
