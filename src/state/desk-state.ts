import type { ChartFault } from '../music/chart/chart';
import type { VampState } from '../performance/vamps';
import type { Music } from './pipeline';
import type { SoundState, TransportState } from './ports';
import type { Preferences, Settings } from './settings';

/** A chart of the demo book: invented, whole, and what it teaches. */
export interface DemoChart {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly teaches: string;
}

/** One chart on the player's own shelf. */
export interface ShelfEntry {
  readonly id: string;
  readonly title: string;
  /** When it was last changed, in milliseconds since 1970. */
  readonly changed: number;
  /** Taken off the shelf, so that no other tab brings it back; its text is kept for a while. */
  readonly removed?: true;
}

/** What a change to the music was about. */
export type ChangedThing = keyof Settings | 'chart';

/** A change made while playing: what it was and the bar (from 0) from which it is heard, null when at once. */
export interface Announcement {
  readonly id: number;
  readonly thing: ChangedThing;
  readonly fromBar: number | null;
}

/**
 * Whether what was typed is kept on this device; `late` while it owes an answer for longer than the page waits, `cleared` when another tab
 * deleted everything and `newer` when a newer version of the page has written here, after which this one keeps nothing more.
 */
export type Keeping =
  | { readonly kind: 'kept' }
  | { readonly kind: 'waiting' }
  | { readonly kind: 'late' }
  | { readonly kind: 'refused'; readonly reason: string }
  | { readonly kind: 'cleared' }
  | { readonly kind: 'newer' };

/**
 * What another tab did to the chart that lies here: it saved another text, and either nothing was typed here (`fresh`, choose one)
 * or something was, and it goes on here as a chart of its own (`parted`).
 */
export interface OtherTab {
  readonly kind: 'fresh' | 'parted';
  readonly chartId: string;
  readonly text: string;
}

/** What lies on the music desk: a chart, its settings and the music they give. Changes on a player's action only, never as music goes by. */
export interface DeskState {
  /** `demo-…` for the demo book, `quick` for the quick line, else one of the player's own. */
  readonly chartId: string;
  /** The chart exactly as typed. */
  readonly text: string;
  /** The text as it was opened; null for a chart that was begun here and has yet to be kept. */
  readonly openedText: string | null;
  /** Faults of `text`; while there are any, `music` is the last good music. */
  readonly faults: readonly ChartFault[];
  readonly music: Music | null;
  /** Faults of the quick line as last sent. */
  readonly quickFaults: readonly ChartFault[];
  /** Why a chart without faults gives no music, in the words of the stage that failed; null when all is well. */
  readonly trouble: string | null;
  /** Why the last file asked for was not made; null when it was. */
  readonly unsaved: string | null;
  /** Why the device refused to write the last pass into the journal; null when it did not. */
  readonly unwritten: string | null;
  readonly settings: Settings;
  readonly preferences: Preferences;
  /** The player's own charts, newest first. */
  readonly shelf: readonly ShelfEntry[];
  readonly keeping: Keeping;
  readonly otherTab: OtherTab | null;
  /** Names of saved records that could not be read and were put aside. */
  readonly putAside: readonly string[];
  readonly announcement: Announcement | null;
}

/** What sounds. `bar` changes at most once a bar; the playhead itself is read from the player once a frame. */
export interface PlayingState {
  readonly transport: TransportState;
  readonly sound: SoundState;
  /** Bar of the form (from 0) that sounds, or `startBar` when stopped. */
  readonly bar: number;
  /** Bar from which Play starts; it moves when a bar is touched. */
  readonly startBar: number;
  /** What the open vamp that sounds does, or null. */
  readonly vamp: VampState | null;
}
