import type { ArrangeOptions, Score } from '../music/score';
import type { Chart, ChartFault } from '../music/chart/chart';
import type { Performance } from '../performance/performance';
import type { Preferences, Settings } from './settings';
import type { SoundState, TransportState } from './ports';
import type { Result } from '../vocabulary';

/** The last good music: every stage from one chart text and one set of settings. */
export interface Music {
  readonly chart: Chart;
  readonly score: Score;
  readonly performance: Performance;
}

/** The pure stages that the pipeline joins; real ones in the page, small ones in tests. */
export interface Stages {
  readonly readChart: (text: string) => Result<Chart, ChartFault>;
  readonly arrange: (chart: Chart, options: ArrangeOptions) => Score;
  readonly perform: (score: Score, options: { readonly pulse: 'halves' | 'quarters' }) => Performance;
}

/** One chart on the player's own shelf. */
export interface ShelfEntry {
  readonly id: string;
  readonly title: string;
  /** When it was last changed, in milliseconds since 1970. */
  readonly changed: number;
}

/** A change that was made while playing: what it is and the bar (from 0) where it will be heard, null when at once. */
export interface Announcement {
  readonly id: number;
  readonly what: AnnouncedChange;
  readonly fromBar: number | null;
}
export type AnnouncedChange =
  | { readonly kind: 'setting'; readonly name: keyof Settings; readonly settings: Settings }
  | { readonly kind: 'chart' }
  | { readonly kind: 'loop'; readonly settings: Settings };

/** Whether what was typed is kept on this device. */
export type Keeping = { readonly kind: 'kept' } | { readonly kind: 'waiting' } | { readonly kind: 'refused'; readonly reason: string };

/** What is on the music desk: the chart, its settings and the music they give. Changes only on a player's action. */
export interface DeskState {
  readonly chartId: string;
  /** The chart exactly as typed. */
  readonly text: string;
  /** Faults of `text`; while there are any, `music` is the last good music. */
  readonly faults: readonly ChartFault[];
  readonly music: Music | null;
  /** A sentence-ready reason why the music could not be made from a chart without faults, or null. */
  readonly trouble: string | null;
  readonly settings: Settings;
  readonly preferences: Preferences;
  readonly shelf: readonly ShelfEntry[];
  readonly keeping: Keeping;
  /** Text of this chart as another tab saved it, or null. */
  readonly otherTab: string | null;
  readonly announcement: Announcement | null;
}

/** What sounds. `bar` changes at most once a bar; the playhead itself is read from the player once a frame. */
export interface PlayingState {
  readonly transport: TransportState;
  readonly sound: SoundState;
  /** Index of the sounding bar in the form, or where playing starts when stopped. */
  readonly bar: number;
}
