import type { InputDevice, NoteSink, NoteSource, SourceState } from '../state/listening/ports';
import { type InputMillis, inputMillis } from '../vocabulary';
import { createListeners } from './listeners';
import { readMidiMessage } from './midi-message';
import { createStamps, type Stamps } from './stamps';

/** What MIDI needs of the browser. */
export interface MidiParts {
  /** Asks for MIDI without system-exclusive messages; null where the browser does not have it. */
  readonly request: (() => Promise<MIDIAccess>) | null;
  /** The page's clock, which also stamps the messages, in milliseconds. */
  readonly now: () => number;
  /** Calls back when the page loses the keyboard's attention (another window, a hidden tab). */
  readonly onAway: (listener: () => void) => () => void;
}

/** A keyboard to listen to and, where there is one, a piano to send to. */
export interface Midi {
  readonly source: NoteSource;
  readonly sink: NoteSink;
}

/** Every MIDI input on every channel as one keyboard. Devices may come and go; what was held on one that goes is let go. */
export function createMidi({ request, now, onAway }: MidiParts): Midi {
  const { changed, played, ...listeners } = createListeners();
  /** Held notes by input. */
  const held = new Map<string, Map<number, number>>();
  /** Inputs whose damper pedal is down. */
  const pedals = new Set<string>();
  const stamps = new Map<string, Stamps>();
  let access: MIDIAccess | null = null;
  let state: SourceState = { kind: 'off' };
  let endAway: (() => void) | null = null;

  const become = (next: SourceState): void => {
    state = next;
    changed();
  };
  const release = (input: string, at: InputMillis): void => {
    for (const midi of held.get(input)?.keys() ?? []) played({ kind: 'note off', midi, at });
    held.delete(input);
    // A pedal that was down when the device went away comes up by itself.
    if (pedals.delete(input)) played({ kind: 'pedal', down: false, at });
  };
  const releaseAll = (): void => {
    for (const input of [...held.keys()]) release(input, inputMillis(now()));
  };
  const stampsOf = (input: string): Stamps => {
    const known = stamps.get(input) ?? createStamps();
    stamps.set(input, known);
    return known;
  };

  const receive = (input: string, event: MIDIMessageEvent): void => {
    const message = event.data === null ? null : readMidiMessage(event.data);
    if (message === null) return;
    if (message.kind === 'all off') {
      release(input, inputMillis(now()));
      return;
    }
    const { at, coarse } = stampsOf(input).read(event.timeStamp, now());
    const keys = held.get(input) ?? new Map<number, number>();
    held.set(input, keys);
    if (message.kind === 'pedal') {
      if (message.down) pedals.add(input);
      else pedals.delete(input);
      played({ ...message, at });
    } else if (message.kind === 'note on') {
      keys.set(message.midi, message.velocity);
      played({ ...message, at, coarse });
    } else if (keys.delete(message.midi)) played({ ...message, at });
  };

  const connected = (): MIDIInput[] => [...(access?.inputs.values() ?? [])].filter((port) => port.state === 'connected');
  const meet = (): void => {
    const inputs = connected();
    const before = state.kind === 'listening' ? state.devices : [];
    for (const input of inputs) input.onmidimessage = (event) => receive(input.id, event);
    const gone = before.filter(({ id }) => !inputs.some((input) => input.id === id));
    for (const { id } of gone) release(id, inputMillis(now()));
    const lost = gone[0] ?? null;
    if (inputs.length > 0) become({ kind: 'listening', devices: inputs.map(deviceOf) });
    else if (lost) become({ kind: 'lost', device: lost.name });
    else if (state.kind !== 'lost') become({ kind: 'no device' });
  };

  const source: NoteSource = {
    name: 'midi',
    async open() {
      if (state.kind === 'asking' || state.kind === 'listening') return;
      if (request === null) return become({ kind: 'missing' });
      become({ kind: 'asking' });
      try {
        access ??= await request();
      } catch (error) {
        return become(failure(error));
      }
      access.onstatechange = meet;
      endAway = onAway(releaseAll);
      meet();
    },
    close() {
      releaseAll();
      for (const input of access?.inputs.values() ?? []) input.onmidimessage = null;
      if (access) access.onstatechange = null;
      endAway?.();
      endAway = null;
      become({ kind: 'off' });
    },
    state: () => state,
    level: () => 0,
    ...listeners,
  };
  return { source, sink: createSink(() => access, now) };
}

function createSink(access: () => MIDIAccess | null, now: () => number): NoteSink {
  const sent = new Map<string, { readonly port: MIDIOutput; readonly midi: number; readonly until: number }>();
  let serial = 0;
  return {
    outputs: () => [...(access()?.outputs.values() ?? [])].filter((port) => port.state === 'connected').map(deviceOf),
    send(output, midi, velocity, at, until) {
      const port = access()?.outputs.get(output);
      if (port?.state !== 'connected') return;
      port.send([0x90, midi, Math.max(1, Math.min(127, Math.round(velocity)))], at);
      port.send([0x80, midi, 0], until);
      for (const [key, note] of sent) if (note.until < now() - 1000) sent.delete(key);
      serial += 1;
      sent.set(String(serial), { port, midi, until });
    },
    silence() {
      // Notes on their way cannot be taken back everywhere: their ends are sent now and once more after they would have begun.
      for (const { port, midi, until } of sent.values()) {
        if (port.state !== 'connected') continue;
        port.send([0x80, midi, 0]);
        if (until > now()) port.send([0x80, midi, 0], until);
      }
      for (const port of new Set([...sent.values()].map((note) => note.port)))
        if (port.state === 'connected') port.send([0xb0, 123, 0], now() + 250);
      sent.clear();
    },
  };
}

const deviceOf = (port: MIDIPort): InputDevice => ({ id: port.id, name: port.name ?? port.manufacturer ?? port.id });

function failure(error: unknown): SourceState {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return { kind: 'refused' };
  if (name === 'NotSupportedError') return { kind: 'missing' };
  return { kind: 'failed', reason: error instanceof Error ? error.message : String(error) };
}
