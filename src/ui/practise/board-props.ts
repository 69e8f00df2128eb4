import type { ReactNode } from 'react';
import type { Panel } from '../../layout/grid/cards';
import type { Frame } from '../../layout/grid/frame';
import type { Score } from '../../music/score';
import type { PartName, Performance } from '../../performance/performance';
import type { Heard } from '../../state/ports';
import type { Stroke } from '../../vocabulary';

/** A run of sounding bars, [fromBar, toBar), counted from 0 over the whole form. */
export interface BarRun {
  readonly fromBar: number;
  readonly toBar: number;
}

/** A place whose stroke was changed by hand. */
export interface EditedPlace {
  readonly bar: number;
  readonly step: number;
}

/** What an open vamp is doing: going round until the cue, leaving after this round, or (the cue came too late) going round once more; null when none sounds. */
export type VampState = 'holding' | 'leaving' | 'one more round' | null;

/** Draws something over the lanes of a panel of the sounding card, in the panel's own units. */
export type PanelOver = (panel: Panel, frame: Frame) => ReactNode;

/** A cell that was touched, or reached with Enter: the sounding bar (from 0), its step, and the stroke found there. */
export interface SelectedCell {
  readonly bar: number;
  readonly step: number;
  readonly stroke: Stroke | null;
}

/**
 * What the Practise board is given. The board keeps nothing but which card is shown, which cell has the focus and which
 * stroke is explained; everything else comes from here. Bars are counted from 0 over the whole form (`SoundingBar.index`).
 */
export interface PractiseBoardProps {
  /** What is to be played next: drawn when stopped, and while playing whenever `scoreOf` knows nothing better. */
  readonly score: Score;
  /** The arrangement of the whole form, for bars that `score` leaves out because it is a loop; `score` itself when missing. */
  readonly whole?: Score;
  /** The score a performance was made from, so that a live change is drawn when it is heard and not before. Null when unknown. */
  readonly scoreOf?: (performance: Performance) => Score | null;
  /** What is heard at this moment; read once a frame, never stored. */
  readonly heard: () => Heard | null;
  /** True from Play to Stop, count-in included: the frame loop runs only then. */
  readonly playing: boolean;
  /** The bar the music would start at: its card is shown when stopped. */
  readonly cursorBar: number;
  /** The loop, or null when the whole form goes round. */
  readonly loop: BarRun | null;
  /** Parts that do not sound; drawn thinner and said in words. */
  readonly silent?: readonly PartName[];
  /** One sentence why a stroke is what it is; empty when it is said elsewhere. */
  readonly why: (stroke: Stroke) => string;
  /** A bar was touched, or the arrow keys left the card: the cursor should go there (and the music, when it plays). */
  readonly onStartAt: (barIndex: number) => void;
  /** A stroke was touched: sound it, say. The board opens the sentence by itself. */
  readonly onStroke: (stroke: Stroke) => void;
  /** A cell of the grid was touched, or Enter pressed on it, with the stroke that was found or null. Comes before `onStroke` and `onEmptyCell`. */
  readonly onSelect?: (cell: SelectedCell) => void;
  /** A cell without a stroke was touched in the lane of a hand, or Enter pressed on it: the place for a new stroke. */
  readonly onEmptyCell?: (bar: number, step: number, hand: 'right' | 'left') => void;
  /** A loop handle came to rest: loop the bars [fromBar, toBar), always whole cards. */
  readonly onLoop: (fromBar: number, toBar: number) => void;
  /** Whether the hand strip is shown; true when missing. */
  readonly strip?: boolean;
  /** Whether the percussion has rows of its own under the bass; not shown when missing. On screens narrower than 700 px it stays off unless this is `always`. */
  readonly showPercussion?: boolean | 'always';
  /** Places whose stroke was changed by hand, bars and steps from 0; marked in the grid and said in the names of their cells. */
  readonly edits?: readonly EditedPlace[];
  /** What the open vamp that sounds is doing; null when missing. */
  readonly vamp?: VampState;
  /** One line at the top of the sounding card for as long as it is given, such as an exercise that is crossed on purpose. */
  readonly banner?: ReactNode;
  /** Drawn over every panel of the sounding card; nothing when missing. */
  readonly over?: PanelOver | null;
  /** Stands at the left of the map of the form, on the same row: title and quick line. */
  readonly children?: ReactNode;
  /** Takes the place of the lanes of the sounding card: the staff view. Called with the bars of the card, [fromBar, toBar). */
  readonly staff?: (fromBar: number, toBar: number) => ReactNode;
}
