/**
 * The frame of a panel: its width, its lanes from top to bottom and its type sizes, in units. A panel is 624 units wide; side
 * by side on a window 1280 px wide a unit is one CSS px, so the sizes below are the sizes asked for "from a metre away".
 */

/** A band of a panel. */
export interface Lane {
  readonly top: number;
  readonly height: number;
}

/** The lanes of a panel. */
export type LaneName = 'side' | 'chords' | 'count' | 'clave' | 'right' | 'left' | 'bass';

/** Where the lanes of a panel lie and how large its type is, in units. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  /** True when the panels of a card stand one above the other. */
  readonly stacked: boolean;
  readonly lanes: Readonly<Record<LaneName, Lane>>;
  /** Type sizes, and the height of a named mark. */
  readonly type: { readonly chord: number; readonly count: number; readonly note: number; readonly mark: number };
  /** How much larger than the plain sizes everything is drawn: more where there is height to spare, less where it is short. */
  readonly enlarged: number;
}

/** Width of a panel in units: eight cells of 78. */
export const PANEL_WIDTH = 624;

/** Lane heights; the right hand takes what is left, within its own bounds. */
const WIDE = { side: 52, chords: 53, count: 31, clave: 35, left: 49, bass: 42 };
const STACKED = { side: 40, chords: 50, count: 31, clave: 33, left: 48, bass: 42 };
const RIGHT = { least: 126, most: 360 };

/** A frame as near to `height` as its lanes allow, all sizes but the width times `enlarged`. */
export function frameOf(stacked: boolean, height: number, enlarged = 1): Frame {
  const plain = stacked ? STACKED : WIDE;
  const heights = Object.fromEntries(Object.entries(plain).map(([name, each]) => [name, Math.round(each * enlarged)])) as typeof plain;
  const others = Object.values(heights).reduce((sum, each) => sum + each, 0);
  const right = Math.round(Math.min(RIGHT.most * enlarged, Math.max(RIGHT.least * enlarged, height - others)));
  const lanes = {} as Record<LaneName, Lane>;
  let top = 0;
  for (const name of ORDER) {
    const each = name === 'right' ? right : heights[name];
    lanes[name] = { top, height: each };
    top += each;
  }
  const type = { chord: 44 * enlarged, count: (stacked ? 23 : 24) * enlarged, note: 27 * enlarged, mark: 31 * enlarged };
  return { width: PANEL_WIDTH, height: top, stacked, lanes, type, enlarged };
}

/** Lanes from top to bottom. */
const ORDER = ['side', 'chords', 'count', 'clave', 'right', 'left', 'bass'] as const;

/** The least height a frame can have. */
export const leastHeight = (stacked: boolean, enlarged = 1): number => frameOf(stacked, 0, enlarged).height;

/** The height of a lane's middle. */
export const middleOf = (frame: Frame, lane: LaneName): number => frame.lanes[lane].top + frame.lanes[lane].height / 2;

/** Width of a cell: eight to the panel in 4/4, six in 6/8. */
export const cellWidth = (frame: Frame, fullSteps: number): number => frame.width / fullSteps;
