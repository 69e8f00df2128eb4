import { leastHeight, PANEL_WIDTH } from '../../layout/grid/frame';
import { nextHeight } from '../../layout/grid/next-boxes';
import type { BoardSize } from './use-board-size';

/** How the board's room is shared out. */
export interface BoardRoom {
  /** Panels one above the other. */
  readonly stacked: boolean;
  /** Height of one panel of the sounding card, in the units of `frame.ts`. */
  readonly nowUnits: number;
  /** Height of the hand strip in CSS px. */
  readonly stripPx: number;
  /** How much larger than the plain sizes everything is drawn. */
  readonly enlarged: number;
}

/** Below this width panels stack. */
const STACK_BELOW_PX = 700;
/** The gap between the rows in CSS px; it matches `practise.css`. */
const GAP_PX = 8;
/** Heights that the hand strip can have in CSS px, best first. */
const STRIP_PX = { wide: [98, 72, 62], narrow: [70] };
/** Drawn larger only if the sounding card is then still this many times as high as it must be. */
const AMPLE = 1.1;
const LARGER = 1.25;
/** A little smaller, so that the strip finds a place on a phone. */
const SNUG = 0.95;
/** Smaller than the plain sizes when nothing else helps: the whole next card comes first. */
const SMALLER = [0.9, 0.8] as const;

/**
 * Shares the height. The next card is whole above the transport; the strip has its place where the plain sizes (on wide windows, the
 * sizes of a window 1280 px wide) leave it one, else it follows below; the sounding card takes the rest, never less than it needs.
 */
export function boardRoom(size: BoardSize, strip: boolean): BoardRoom {
  const stacked = size.width < STACK_BELOW_PX;
  const pair = size.width / (2 * PANEL_WIDTH);
  const scale = stacked ? size.width / PANEL_WIDTH : pair;
  const panels = stacked ? 2 : 1;
  const strips = strip ? STRIP_PX[stacked ? 'narrow' : 'wide'] : [0];
  const left = (enlarged: number, stripPx: number) => {
    const below = stripPx > 0 ? stripPx + GAP_PX : 0;
    return size.height - size.top - 3 * GAP_PX - nextHeight(stacked, enlarged) * pair - below;
  };
  const fits = (enlarged: number, stripPx: number, times = 1) =>
    leastHeight(stacked, enlarged) * times * scale * panels <= left(enlarged, stripPx);
  const shared = (enlarged: number, stripPx: number, stripHeight = stripPx): BoardRoom => {
    const units = Math.round(left(enlarged, stripPx) / scale / panels);
    return { stacked, enlarged, stripPx: stripHeight, nowUnits: Math.max(leastHeight(stacked, enlarged), units) };
  };
  const tallest = strips[0] ?? 0;
  if (!stacked && fits(LARGER, tallest, AMPLE)) return shared(LARGER, tallest);
  const plain = stacked ? [1, SNUG] : pair > 1 ? [1, 1 / pair] : [1];
  for (const enlarged of plain) {
    const stripPx = strips.find((each) => fits(enlarged, each));
    if (stripPx !== undefined) return shared(enlarged, stripPx);
  }
  const enlarged = [...plain, ...SMALLER].find((each) => fits(each, 0)) ?? 0.8;
  return shared(enlarged, 0, tallest);
}
