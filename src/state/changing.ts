import type { StoreApi } from 'zustand/vanilla';
import type { Command, DeskCommand } from './command';
import type { DeskState } from './desk-state';
import type { Opener } from './open-chart';
import type { Pipeline } from './pipeline';
import type { Timer } from './ports';
import { reduce, remake, withSettings } from './reduce';
import type { AfterFrame } from './sounding';

/** From this many characters, or bars as they sound, a chart is read only when typing pauses. */
const LONG_TEXT = 8_000;
const LONG_FORM = 200;
/** How long that pause is. */
const READING_MS = 200;

/** Presses that are made in a row, at the piano, while it plays. */
const PRESSED = [
  'exchange sides',
  'another one',
  'step level',
  'toggle device',
  'loop cycle',
  'loop off',
  'one bar before',
  'one bar after',
  'move loop end',
] as const satisfies readonly DeskCommand['kind'][];
type Pressed = Extract<DeskCommand, { kind: (typeof PRESSED)[number] }>;
/** True for a press whose music is made after it is drawn. */
export const isPressed = (command: Command): command is Pressed => (PRESSED as readonly string[]).includes(command.kind);

/** Changes of the desk, each at its own time: most at once, the music of a press after the press is drawn, long text when typing pauses. */
export interface Changing {
  change(command: DeskCommand): void;
  type(text: string): void;
  /** Makes the music that a press has asked for and that still waits for its frame. */
  arrange(): void;
}

/** What changing asks of the desk and of the world. */
export interface ChangingPorts {
  readonly store: StoreApi<DeskState>;
  readonly pipeline: Pipeline;
  readonly shelved: Opener['shelved'];
  readonly timer: Timer;
  readonly afterFrame: AfterFrame;
}

/** Nothing waits to be read or made. */
export function createChanging({ store, pipeline, shelved, timer, afterFrame }: ChangingPorts): Changing {
  let cancelReading: (() => void) | null = null;
  let toArrange = false;
  let cancelArranging: (() => void) | null = null;

  /** A long chart is read when typing pauses, so that the text itself never waits. */
  const type = (text: string): void => {
    cancelReading?.();
    cancelReading = null;
    const bars = store.getState().music?.whole.bars.length ?? 0;
    if (text.length < LONG_TEXT && bars < LONG_FORM) {
      change({ kind: 'type', text });
      return;
    }
    const before = store.getState();
    if (text !== before.text) store.setState(shelved({ ...before, text }, before));
    cancelReading = timer.after(READING_MS, () => change({ kind: 'type', text: store.getState().text }));
  };

  const arrange = (): void => {
    if (!toArrange) return;
    toArrange = false;
    cancelArranging?.();
    store.setState(remake(store.getState(), pipeline));
  };

  /** The answer to the press, a setting, is drawn before its music is made. */
  const press = (command: Pressed): void => {
    const before = store.getState();
    const after = withSettings(before, command);
    if (after === before) return;
    store.setState(after);
    if (toArrange) return;
    toArrange = true;
    cancelArranging = afterFrame(arrange);
  };

  const change = (command: DeskCommand): void => {
    if (isPressed(command)) {
      press(command);
      return;
    }
    const before = store.getState();
    const after = reduce(before, command, pipeline);
    if (after !== before) store.setState(command.kind === 'type' && after.text !== before.text ? shelved(after, before) : after);
  };

  return { change, type, arrange };
}
