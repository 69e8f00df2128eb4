/** A MIDI keyboard for browser tests: injected before the page opens, played from inside the page, so that its times are those of the page's own clock. */
import type { Page } from '@playwright/test';

/** A note of a take that is to be played: when, in milliseconds from `from`, and what. */
export interface ScriptedNote {
  readonly afterMs: number;
  readonly midi: number;
  readonly velocity: number;
  readonly lastsMs: number;
}

declare global {
  interface Window {
    testKeyboard?: {
      plug(): void;
      unplug(): void;
      /** Sends raw bytes, stamped now or with `at`. */
      send(bytes: readonly number[], at?: number): void;
      /** Plays notes at their times from `from` on the page's clock. */
      play(notes: readonly ScriptedNote[], from: number): Promise<void>;
      readonly handlerMs: number[];
      /** What was sent to the piano that hangs on the same cable: bytes, and the moment they are for. */
      readonly sent: { readonly bytes: readonly number[]; readonly at: number }[];
      unplugPiano(): void;
      asked: number;
    };
  }
}

/** Puts the keyboard into the page; `plugged` false leaves it in its case. Call before the page opens. */
export async function injectKeyboard(page: Page, plugged = true) {
  await page.addInitScript((startsPlugged) => {
    const port = {
      id: 'quay-1',
      name: 'Quay stage keyboard',
      manufacturer: 'Quay Works',
      state: startsPlugged ? 'connected' : 'disconnected',
      onmidimessage: null as ((event: { data: Uint8Array; timeStamp: number }) => void) | null,
    };
    const sent: { bytes: number[]; at: number }[] = [];
    const piano = {
      id: 'quay-2',
      name: 'Quay stage piano',
      state: 'connected',
      send: (bytes: readonly number[], at = performance.now()) => void sent.push({ bytes: [...bytes], at }),
    };
    const access = {
      inputs: new Map([[port.id, port]]),
      outputs: new Map([[piano.id, piano]]),
      onstatechange: null as (() => void) | null,
    };
    const handlerMs: number[] = [];
    const send = (bytes: readonly number[], at = performance.now()): void => {
      const before = performance.now();
      port.onmidimessage?.({ data: Uint8Array.from(bytes), timeStamp: at });
      handlerMs.push(performance.now() - before);
    };
    const keyboard = {
      plug() {
        port.state = 'connected';
        access.onstatechange?.();
      },
      unplug() {
        port.state = 'disconnected';
        access.onstatechange?.();
      },
      send,
      async play(notes: readonly ScriptedNote[], from: number) {
        const events = notes
          .flatMap(({ afterMs, midi, velocity, lastsMs }) => [
            { at: from + afterMs, bytes: [0x90, midi, velocity] },
            { at: from + afterMs + lastsMs, bytes: [0x80, midi, 0] },
          ])
          .sort((a, b) => a.at - b.at);
        for (const { at, bytes } of events) {
          const wait = at - performance.now();
          if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait));
          // The stamp is that of the key, not of the busy page that hears of it later.
          send(bytes, Math.min(at, performance.now()));
        }
      },
      handlerMs,
      sent,
      unplugPiano() {
        piano.state = 'disconnected';
        access.onstatechange?.();
      },
      asked: 0,
    };
    window.testKeyboard = keyboard;
    Object.defineProperty(navigator, 'requestMIDIAccess', {
      value: async () => {
        keyboard.asked += 1;
        return access;
      },
    });
  }, plugged);
}
