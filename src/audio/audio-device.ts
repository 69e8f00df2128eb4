/*
 * The browser's audio context and whether it may sound. A context may be suspended until a gesture, be interrupted by a call or
 * a lock screen, or come back dead; anything but `running` counts as "needs a gesture", and the next one resumes it.
 */

/** Whether the device sounds. `reason` completes "The sound could not start: …". */
export type DeviceState =
  | { readonly kind: 'off' }
  | { readonly kind: 'waking' }
  | { readonly kind: 'running' }
  | { readonly kind: 'blocked'; readonly reason: string };

/** The one audio context of the page. */
export interface AudioDevice {
  /** Makes the context if there is none and resumes it; call it inside a gesture. Null when the browser has no sound at all. */
  wake(): AudioContext | null;
  context(): AudioContext | null;
  state(): DeviceState;
}

/** How long a context may take to run before we say that it does not. */
const PATIENCE_MS = 1000;

/** `onChange` hears of every new state; `onReplaced` when a dead context had to be replaced. */
export function createAudioDevice(onChange: () => void, onReplaced: () => void): AudioDevice {
  let context: AudioContext | null = null;
  let state: DeviceState = { kind: 'off' };
  let patience: ReturnType<typeof setTimeout> | undefined;
  let hasRun = false;

  const become = (next: DeviceState): void => {
    if (next.kind === state.kind && next.kind !== 'blocked') return;
    state = next;
    onChange();
  };
  const awaitRunning = (made: AudioContext, lastChance: boolean): void => {
    clearTimeout(patience);
    patience = setTimeout(() => {
      if (made !== context || made.state === 'running') return;
      if (hasRun && lastChance && !document.hidden) replace();
      else become({ kind: 'blocked', reason: reasonFor(made.state) });
    }, PATIENCE_MS);
    // A refused resume shows as a state that is not running, which the patience above reports.
    made.resume().catch(() => undefined);
  };
  const watch = (made: AudioContext): void => {
    made.addEventListener('statechange', () => {
      if (made !== context) return;
      if (made.state === 'running') {
        hasRun = true;
        clearTimeout(patience);
        become({ kind: 'running' });
      } else if (state.kind === 'running') become({ kind: 'blocked', reason: reasonFor(made.state) });
    });
  };
  const make = (): AudioContext | null => {
    try {
      setPlaybackSession();
      const made = new AudioContext({ latencyHint: 'interactive' });
      watch(made);
      return made;
    } catch {
      become({ kind: 'blocked', reason: 'this browser offers no sound to this page' });
      return null;
    }
  };
  const replace = (): void => {
    void context?.close().catch(() => undefined);
    context = make();
    hasRun = false;
    if (context === null) return;
    become({ kind: 'waking' });
    awaitRunning(context, false);
    onReplaced();
  };
  const wakeAgain = (lastChance: boolean): void => {
    if (context !== null && state.kind === 'blocked' && context.state !== 'running') awaitRunning(context, lastChance);
  };
  for (const gesture of ['pointerdown', 'keydown', 'touchend'])
    addEventListener(gesture, () => wakeAgain(true), { capture: true, passive: true });
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden) wakeAgain(false);
  });

  return {
    wake() {
      context ??= make();
      if (context === null) return null;
      if (context.state === 'running') become({ kind: 'running' });
      else {
        if (state.kind !== 'waking') become({ kind: 'waking' });
        awaitRunning(context, true);
      }
      return context;
    },
    context: () => context,
    state: () => state,
  };
}

/** iOS plays through its ringer switch only in a playback session (Audio Session API, `navigator.audioSession`). */
function setPlaybackSession(): void {
  const { audioSession } = navigator as Navigator & { audioSession?: { type: string } };
  if (audioSession !== undefined) audioSession.type = 'playback';
}

function reasonFor(state: string): string {
  return state === 'interrupted' ? 'a call or another program has taken it' : 'the browser waits for a touch or a key';
}
