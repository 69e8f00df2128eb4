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
  /** Rows of the percussion under the bass, from the top; none when it is not shown. */
  readonly rows: readonly Lane[];
  /** How much larger than the plain sizes everything is drawn: more where there is height to spare, less where it is short. */
  readonly enlarged: number;
}

/** Width of a panel in units: eight cells of 78. */
export const PANEL_WIDTH = 624;

/** Lane heights; the right hand takes what is left, within its own bounds. */
const WIDE = { side: 50, chords: 51, count: 30, clave: 31, left: 46, bass: 40 };
const STACKED = { side: 40, chords: 50, count: 31, clave: 33, left: 48, bass: 42 };
const RIGHT = { least: 118, most: 360 };

/** Height of a row of the percussion: its label above its strokes. */
const ROW = { wide: 37, stacked: 46 };

/** What a frame holds beside the lanes that are always there. */
export interface FrameParts {
  /** Rows of the percussion; 0 when missing. */
  readonly rows?: number;
  /** False when the left hand plays the bass line, which then stands in the bass lane alone; true when missing. */
  readonly left?: boolean;
}

/** A frame as near to `height` as its lanes allow, all sizes but the width times `enlarged`. */
export function frameOf(stacked: boolean, height: number, enlarged = 1, { rows = 0, left = true }: FrameParts = {}): Frame {
  const plain = { ...(stacked ? STACKED : WIDE), ...(left ? {} : { left: 0 }) };
  const heights = Object.fromEntries(Object.entries(plain).map(([name, each]) => [name, Math.round(each * enlarged)])) as typeof plain;
  const row = Math.round((stacked ? ROW.stacked : ROW.wide) * enlarged);
  const others = Object.values(heights).reduce((sum, each) => sum + each, rows * row);
  const right = Math.round(Math.min(RIGHT.most * enlarged, Math.max(RIGHT.least * enlarged, height - others)));
  const lanes = {} as Record<LaneName, Lane>;
  let top = 0;
  for (const name of ORDER) {
    const each = name === 'right' ? right : heights[name];
    lanes[name] = { top, height: each };
    top += each;
  }
  const type = { chord: 45 * enlarged, count: (stacked ? 23 : 24) * enlarged, note: 27 * enlarged, mark: 31 * enlarged };
  return {
    width: PANEL_WIDTH,
    height: top + rows * row,
    stacked,
    lanes,
    type,
    rows: Array.from({ length: rows }, (_, at) => ({ top: top + at * row, height: row })),
    enlarged,
  };
}

/** Lanes from top to bottom. */
const ORDER = ['side', 'chords', 'count', 'clave', 'right', 'left', 'bass'] as const;

/** The least height a frame can have. */
export const leastHeight = (stacked: boolean, enlarged = 1, parts: FrameParts = {}): number => frameOf(stacked, 0, enlarged, parts).height;

/** The height of a lane's middle. */
export const middleOf = (frame: Frame, lane: LaneName): number => frame.lanes[lane].top + frame.lanes[lane].height / 2;

/** Width of a cell: eight to the panel in 4/4, six in 6/8. */
export const cellWidth = (frame: Frame, fullSteps: number): number => frame.width / fullSteps;
