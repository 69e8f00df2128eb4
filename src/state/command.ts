import type { FigureEdit } from '../music/montuno/edits';
import type { PartName } from '../performance/performance';
import type { InputMillis } from '../vocabulary';
import type { Loop, PlainMix, Preferences, Settings } from './settings';

/** What changes the chart or its settings. Each is a plain value, and the change is a pure function of the desk's state (see `reduce`). */
export type DeskCommand =
  | { readonly kind: 'type'; readonly text: string }
  | { readonly kind: 'set'; readonly settings: Partial<Settings> }
  | { readonly kind: 'prefer'; readonly preferences: Partial<Preferences> }
  | { readonly kind: 'exchange sides' }
  | { readonly kind: 'another one' }
  /** Half notes a minute, up or down; a goal is moved with `goal`. */
  | { readonly kind: 'step tempo'; readonly by: number; readonly goal?: boolean }
  | { readonly kind: 'step level'; readonly by: 1 | -1 }
  | { readonly kind: 'toggle device'; readonly device: Settings['devices'][number] }
  /** Changes one stroke by hand. */
  | { readonly kind: 'edit'; readonly edit: FigureEdit }
  | { readonly kind: 'undo edit' }
  | { readonly kind: 'redo edit' }
  /** Takes every change by hand back; `redo edit` brings them again one by one. */
  | { readonly kind: 'reset edits' }
  /** Loops the cycle that `bar` stands in. */
  | { readonly kind: 'loop cycle'; readonly bar: number }
  /** Loops the smallest run of whole cycles that holds these bars. */
  | { readonly kind: 'loop bars'; readonly loop: Loop }
  | { readonly kind: 'loop off' }
  | { readonly kind: 'one bar before' }
  | { readonly kind: 'one bar after' }
  | { readonly kind: 'move loop end'; readonly end: 'from' | 'to'; readonly by: 1 | -1 }
  | { readonly kind: 'move loop'; readonly by: 1 | -1 }
  | { readonly kind: 'mute'; readonly part: PartName; readonly muted: boolean }
  | { readonly kind: 'balance'; readonly part: PartName; readonly level: number }
  | { readonly kind: 'plain mix'; readonly mix: PlainMix };

/** What reaches the player or the device. */
export type WorldCommand =
  | { readonly kind: 'play' }
  | { readonly kind: 'stop' }
  | { readonly kind: 'play or stop' }
  /** Touching a bar: plays from it if the music runs, else waits there. */
  | { readonly kind: 'start at bar'; readonly bar: number }
  /** Leaves an open vamp at the end of the round, or of the next. */
  | { readonly kind: 'cue' }
  | { readonly kind: 'turn page'; readonly by: 1 | -1 }
  | { readonly kind: 'tap'; readonly at: InputMillis }
  | { readonly kind: 'sound'; readonly midi: readonly number[]; readonly velocity: number }
  | { readonly kind: 'open'; readonly chartId: string }
  /** Reads the quick line and plays it at once; its faults are left in `quickFaults`. */
  | { readonly kind: 'play quick'; readonly line: string }
  | { readonly kind: 'new chart' }
  | { readonly kind: 'show the other tab' }
  | { readonly kind: 'keep this one' }
  | { readonly kind: 'save midi' };

/** Everything a player can ask of the desk, as values, so that buttons, keys and tests share one list. */
export type Command = DeskCommand | WorldCommand;
