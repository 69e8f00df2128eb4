import type { Clave, Colour, Compass, Device, Direction, Hands, Level, Stretch } from '../vocabulary';
import type { CellId } from './montuno/cells';
import type { FigureEdit } from './montuno/edits';
import type { SoloKind } from './montuno/solo';
import type { PercussionChoice } from './percussion/percussion';

/** What a player may set; everything missing has a stated default. */
export interface ArrangeOptions {
  /** Overrides the chart's clave (the start; restarts are swapped with it). */
  readonly direction?: Direction;
  readonly kind?: Clave['kind'];
  readonly style?: string;
  /** Fixed level for the whole form; without it the sections' roles choose, and 2 where there is none. */
  readonly level?: Level;
  readonly devices?: readonly Device[];
  readonly hands?: Hands;
  readonly colour?: Colour;
  /** Makes free choices repeatable; 0 when missing. */
  readonly seed?: number;
  /** Semitones. */
  readonly transpose?: number;
  /** Passes of an open vamp; 1 (2 if its length is odd) when missing. */
  readonly vampPasses?: number;
  /** Closed (the last bar leads to the first) unless false. */
  readonly closed?: boolean;
  readonly pickup?: boolean;
  /** The widest stretch of a hand; an octave when missing. */
  readonly stretch?: Stretch;
  /** Keys of the instrument; 88 when missing. */
  readonly compass?: Compass;
  /** A pair of cells by their ids (`A4`, `B2`) in place of the level's own. */
  readonly cells?: { readonly two: CellId; readonly three: CellId };
  /** A rhythm of the player's own in place of every montuno pattern: two bars as chart reading gives them, and the direction they are written in. */
  readonly ownFigure?: { readonly text: string; readonly direction: Direction };
  /** True puts every cell on the wrong side, as an exercise. */
  readonly crossed?: boolean;
  /** Which percussion plays; by style and section when missing. */
  readonly percussion?: PercussionChoice;
  /** Changes to single strokes, made by hand. */
  readonly edits?: readonly FigureEdit[];
  /** A solo in place of the figure: an example line, or guide tones alone to improvise on. */
  readonly solo?: SoloKind;
  /** Sounding bars [from, to) to arrange as a closed loop; the whole form when missing. */
  readonly range?: { readonly fromBar: number; readonly toBar: number };
}

/** Defaults of what a player has not set. */
export const ARRANGE_DEFAULTS = {
  level: 2,
  hands: 'double',
  seed: 0,
  transpose: 0,
  stretch: 'octave',
  compass: 88,
} as const satisfies Partial<ArrangeOptions>;
