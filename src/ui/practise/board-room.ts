import { type FrameParts, leastHeight, PANEL_WIDTH } from '../../layout/grid/frame';
import { nextHeight } from '../../layout/grid/next-sizes';
import type { BoardSize } from './use-board-size';

/** How the board's room is shared out. */
export interface BoardRoom {
  /** Panels one above the other. */
  readonly stacked: boolean;
  /** Height of one panel of the sounding card, in the units of `frame.ts`. */
  readonly nowUnits: number;
  /** Height of the hand strip in CSS px. */
  readonly stripPx: number;
  /** Height of the next card in CSS px. */
  readonly nextPx: number;
  /** How much larger than the plain sizes everything is drawn. */
  readonly enlarged: number;
  /** Rows of the percussion that have room. */
  readonly rows: number;
}

/** What the sounding card holds beside its usual lanes. */
export interface RoomWishes extends Omit<FrameParts, 'rows'> {
  /** Rows of the percussion when all that sound are shown; 0 when it is not shown. */
  readonly rows?: number;
  /** Rows that are shown before the card gives up its size. */
  readonly fewRows?: number;
  /** True when the player asked for the rows: the few are shown even where everything gets a little smaller for them. */
  readonly asked?: boolean;
  /** True when a line stands at the top of the card. */
  readonly banner?: boolean;
}

/** Below this width panels stack, unless the window is a phone lying on its side. */
export const STACK_BELOW_PX = 700;
/** True where the panels of a card stand one above the other. */
export const isStacked = ({ width, height }: Pick<BoardSize, 'width' | 'height'>): boolean =>
  width < STACK_BELOW_PX && height > width * 0.7;
/** The gap between the rows in CSS px; it matches `practise.css`. */
const GAP_PX = 8;
/** Heights that the hand strip can have in CSS px, best first. */
const STRIP_PX = { wide: [98, 72, 62], narrow: [70] };
/** Drawn larger only if the sounding card is then still this many times as high as it must be. */
const AMPLE = 1.1;
const LARGER = 1.25;
/** A little smaller, so that the strip finds a place on a phone. */
const SNUG = 0.95;
/** Heights of the line at the top of a card and of the one under the percussion, in CSS px; they match `practise.css`. */
const BANNER_PX = 36;
const CAPTION_PX = { wide: 28, narrow: 48 };
/** Smaller than the plain sizes when nothing else helps: the whole next card comes first. */
const SMALLER = [0.9, 0.8, 0.76] as const;

/**
 * Shares the height. The next card is whole above the transport; the strip has its place where the plain sizes (on wide windows, the
 * sizes of a window 1280 px wide) leave it one, else it follows below; the sounding card takes the rest, never less than it needs.
 * Percussion has all its rows where nothing else gets smaller for them, else the few that matter most, else none.
 */
export function boardRoom(size: BoardSize, strip: boolean, wishes: RoomWishes = {}): BoardRoom {
  const { rows = 0, fewRows = 0 } = wishes;
  const bare = sharedOut(size, strip, wishes, 0);
  for (let many = rows; many > Math.min(rows, fewRows); many--) {
    const room = sharedOut(size, strip, wishes, many);
    if (room.fits && room.enlarged >= Math.min(1, bare.enlarged) && room.stripInView >= bare.stripInView) return room;
  }
  // Less at once rather than smaller: of the few, as many as leave the type its size.
  let best: Shared | null = null;
  for (let few = Math.min(rows, fewRows); few > 0; few--) {
    const room = sharedOut(size, strip, wishes, few);
    if (room.fits && wishes.asked && room.enlarged >= SMALLER[0]) return room;
    if (room.fits && room.enlarged > (best?.enlarged ?? 0)) best = room;
  }
  return best ?? bare;
}

/** A way to share the height: whether everything before the strip is in view, and whether the strip is (1) or follows below (0). */
type Shared = BoardRoom & { readonly fits: boolean; readonly stripInView: 0 | 1 };

function sharedOut(size: BoardSize, strip: boolean, wishes: RoomWishes, rows: number): Shared {
  const parts: FrameParts = { rows, ...(wishes.left === undefined ? {} : { left: wishes.left }) };
  const stacked = isStacked(size);
  const lines = (wishes.banner ? BANNER_PX : 0) + (wishes.rows ? CAPTION_PX[stacked ? 'narrow' : 'wide'] : 0);
  const pair = size.width / (2 * PANEL_WIDTH);
  const scale = stacked ? size.width / PANEL_WIDTH : pair;
  const panels = stacked ? 2 : 1;
  const strips = strip ? STRIP_PX[stacked ? 'narrow' : 'wide'] : [0];
  const nextPx = (enlarged: number) => nextHeight(stacked, enlarged) * pair;
  const left = (enlarged: number, stripPx: number) => {
    const below = stripPx > 0 ? stripPx + GAP_PX : 0;
    return size.height - size.top - 3 * GAP_PX - lines - nextPx(enlarged) - below;
  };
  const fits = (enlarged: number, stripPx: number, times = 1) =>
    leastHeight(stacked, enlarged, parts) * times * scale * panels <= left(enlarged, stripPx);
  const shared = (enlarged: number, stripPx: number, stripHeight = stripPx): Shared => {
    const units = Math.round(left(enlarged, stripPx) / scale / panels);
    const nowUnits = Math.max(leastHeight(stacked, enlarged, parts), units);
    return {
      stacked,
      enlarged,
      rows,
      stripPx: stripHeight,
      nextPx: nextPx(enlarged),
      nowUnits,
      fits: fits(enlarged, stripPx),
      stripInView: stripPx > 0 ? 1 : 0,
    };
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
