import type { NoteSource, SourceState } from '../state/listening/ports';
import { inputMillis } from '../vocabulary';
import { isRhythmKey, noteOfKey } from './key-layout';
import { createListeners } from './listeners';
import { createStamps } from './stamps';

/** What the keys need of the browser. */
export interface KeyParts {
  /** Where the keys arrive: the window. */
  readonly target: EventTarget;
  readonly now: () => number;
  readonly onAway: (listener: () => void) => () => void;
}

/** The computer's keys as an instrument. */
export interface ComputerKeys extends NoteSource {
  /** Whether a key is a note of the layout or just a tap in time. */
  setMode(mode: 'notes' | 'rhythm'): void;
  /** Moves the notes by whole octaves, −2 to 2. */
  setOctave(octaves: number): void;
}

/** How hard a key is struck: keys of a computer do not tell. */
const VELOCITY = 84;
const DEVICE = { id: 'computer keys', name: 'computer keys' } as const;

/**
 * Keys played while it is open. It hears them before the page's shortcuts do and keeps those that it plays from them; in text
 * fields, and with Ctrl, Alt or Meta held, it hears nothing.
 */
export function createComputerKeys({ target, now, onAway }: KeyParts): ComputerKeys {
  const { changed, played, ...listeners } = createListeners();
  const held = new Map<string, number | null>();
  let stamps = createStamps();
  let state: SourceState = { kind: 'off' };
  let mode: 'notes' | 'rhythm' = 'notes';
  let octaves = 0;
  let endAway: (() => void) | null = null;

  const become = (next: SourceState): void => {
    state = next;
    changed();
  };
  const releaseAll = (): void => {
    for (const midi of held.values()) if (midi !== null) played({ kind: 'note off', midi, at: inputMillis(now()) });
    held.clear();
  };
  const onKeyDown = (raw: Event): void => {
    const event = raw as KeyboardEvent;
    if (event.ctrlKey || event.metaKey || event.altKey || isTextField(event.target)) return;
    const note = mode === 'notes' ? noteOfKey(event.code) : null;
    if (note === null && !(mode === 'rhythm' && isRhythmKey(event.code))) return;
    event.preventDefault();
    if (event.repeat || held.has(event.code)) return;
    const stamp = stamps.read(event.timeStamp, now());
    const midi = note === null ? null : note + 12 * octaves;
    held.set(event.code, midi);
    if (midi === null) played({ kind: 'onset', strength: 0.7, ...stamp });
    else played({ kind: 'note on', midi, velocity: VELOCITY, ...stamp });
  };
  const onKeyUp = (raw: Event): void => {
    const event = raw as KeyboardEvent;
    const midi = held.get(event.code);
    if (midi === undefined) return;
    held.delete(event.code);
    if (midi !== null) played({ kind: 'note off', midi, at: stamps.read(event.timeStamp, now()).at });
  };

  return {
    name: 'keys',
    async open() {
      if (state.kind === 'listening') return;
      stamps = createStamps();
      // Before the shortcuts, which leave alone what somebody has taken.
      target.addEventListener('keydown', onKeyDown, { capture: true });
      target.addEventListener('keyup', onKeyUp, { capture: true });
      endAway = onAway(releaseAll);
      become({ kind: 'listening', devices: [DEVICE] });
    },
    close() {
      target.removeEventListener('keydown', onKeyDown, { capture: true });
      target.removeEventListener('keyup', onKeyUp, { capture: true });
      endAway?.();
      endAway = null;
      releaseAll();
      become({ kind: 'off' });
    },
    setMode(next) {
      releaseAll();
      mode = next;
    },
    setOctave(next) {
      releaseAll();
      octaves = Math.max(-2, Math.min(2, Math.round(next)));
    },
    state: () => state,
    level: () => 0,
    ...listeners,
  };
}

/** Fields in which a key writes or chooses. */
function isTextField(target: EventTarget | null): boolean {
  if (target === null || !('closest' in target)) return false;
  const element = target as HTMLElement;
  if (element.isContentEditable) return true;
  return (
    element.closest(
      'textarea, select, input:not([type=button]):not([type=checkbox]):not([type=radio]):not([type=range]):not([type=submit])',
    ) !== null
  );
}
