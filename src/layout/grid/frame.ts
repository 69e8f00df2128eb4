/**
 * The frame of a panel: its width, its lanes from top to bottom and its type sizes, in units. A panel is 624 units wide; side
 * by side on a window 1280 px wide a unit is one CSS px, so the sizes below are the sizes asked for "from a metre away".
 */

/** A band of a panel. */
export interface Lane {
  readonly top: number;
  readonly height: number;
}

export type LaneName = 'side' | 'chords' | 'count' | 'clave' | 'right' | 'left' | 'bass';

export interface Frame {
  readonly width: number;
  readonly height: number;
  /** True when the panels of a card stand one above the other. */
  readonly stacked: boolean;
  readonly lanes: Readonly<Record<LaneName, Lane>>;
  readonly type: { readonly side: number; readonly chord: number; readonly count: number; readonly note: number };
}

export const PANEL_WIDTH = 624;

/** Lane heights; the right hand takes what is left, within its own bounds. */
const WIDE = { side: 52, chords: 53, count: 32, clave: 36, left: 50, bass: 44 };
const STACKED = { side: 40, chords: 50, count: 31, clave: 33, left: 48, bass: 42 };
const RIGHT = { least: 132, most: 340 };

/** A frame as near to `height` as the lanes allow. */
export function frameOf(stacked: boolean, height: number): Frame {
  const heights = stacked ? STACKED : WIDE;
  const others = Object.values(heights).reduce((sum, each) => sum + each, 0);
  const right = Math.min(RIGHT.most, Math.max(RIGHT.least, Math.round(height - others)));
  const order: readonly (readonly [LaneName, number])[] = [
    ['side', heights.side],
    ['chords', heights.chords],
    ['count', heights.count],
    ['clave', heights.clave],
    ['right', right],
    ['left', heights.left],
    ['bass', heights.bass],
  ];
  const lanes = {} as Record<LaneName, Lane>;
  let top = 0;
  for (const [name, each] of order) {
    lanes[name] = { top, height: each };
    top += each;
  }
  return {
    width: PANEL_WIDTH,
    height: top,
    stacked,
    lanes,
    type: { side: stacked ? 32 : 44, chord: 44, count: stacked ? 23 : 24, note: 27 },
  };
}

/** The least height a frame can have. */
export const leastHeight = (stacked: boolean): number => frameOf(stacked, 0).height;

/** The height of a lane's middle. */
export const middleOf = (frame: Frame, lane: LaneName): number => frame.lanes[lane].top + frame.lanes[lane].height / 2;

/** Width of a cell: eight to the panel in 4/4, six in 6/8. */
export const cellWidth = (frame: Frame, fullSteps: number): number => frame.width / fullSteps;
