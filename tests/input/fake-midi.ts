/** A MIDI access with ports that are plugged, unplugged and played by hand. */
export class FakePort {
  state: 'connected' | 'disconnected' = 'connected';
  onmidimessage: ((event: { data: Uint8Array; timeStamp: number }) => void) | null = null;
  readonly sent: { readonly bytes: readonly number[]; readonly at: number | undefined }[] = [];
  readonly manufacturer = 'Quay Works';

  constructor(
    readonly id: string,
    readonly name: string,
  ) {}

  play(bytes: readonly number[], timeStamp: number): void {
    this.onmidimessage?.({ data: Uint8Array.from(bytes), timeStamp });
  }
  send(bytes: readonly number[], at?: number): void {
    this.sent.push({ bytes, at });
  }
}

/** The access that `requestMIDIAccess` would give. */
export class FakeMidi {
  readonly inputs = new Map<string, FakePort>();
  readonly outputs = new Map<string, FakePort>();
  onstatechange: (() => void) | null = null;

  plug(id: string, name = `Ferry ${id}`): FakePort {
    const known = this.inputs.get(id) ?? new FakePort(id, name);
    known.state = 'connected';
    this.inputs.set(id, known);
    this.onstatechange?.();
    return known;
  }
  unplug(id: string): void {
    const port = this.inputs.get(id);
    if (port) port.state = 'disconnected';
    this.onstatechange?.();
  }
  /** As the browser's own type, for the code under test. */
  asAccess(): MIDIAccess {
    return this as unknown as MIDIAccess;
  }
}
