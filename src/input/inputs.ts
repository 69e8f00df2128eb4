import type { NoteSink, NoteSource, SourceName } from '../state/listening/ports';
import { type ComputerKeys, createComputerKeys } from './computer-keys';
import { createMicrophone } from './microphone';
import { createMidi } from './midi';

/** Everything that a person can play on, joined to one browser window. */
export interface Inputs {
  readonly sources: Readonly<Record<SourceName, NoteSource>>;
  readonly keys: ComputerKeys;
  readonly sink: NoteSink;
}

/** Inputs of `page`; nothing is asked for until one is opened. `workletAddress` is the clap detector's file, of our own origin. */
export function createInputs(page: Window & typeof globalThis, workletAddress: string): Inputs {
  const { navigator, document } = page;
  const now = (): number => page.performance.now();
  const onAway = (listener: () => void): (() => void) => {
    const onHidden = (): void => {
      if (document.hidden) listener();
    };
    page.addEventListener('blur', listener);
    document.addEventListener('visibilitychange', onHidden);
    return () => {
      page.removeEventListener('blur', listener);
      document.removeEventListener('visibilitychange', onHidden);
    };
  };
  const { source: midi, sink } = createMidi({
    request: 'requestMIDIAccess' in navigator ? () => navigator.requestMIDIAccess({ sysex: false }) : null,
    now,
    onAway,
  });
  const keys = createComputerKeys({ target: page, now, onAway });
  const devices: MediaDevices | undefined = navigator.mediaDevices;
  const microphone = createMicrophone({
    getUserMedia: devices ? (constraints) => devices.getUserMedia(constraints) : null,
    createContext: () => new page.AudioContext({ latencyHint: 'interactive' }),
    workletAddress,
    now,
  });
  return { sources: { midi, keys, microphone }, keys, sink };
}
