/** A microphone that is muted, put to sleep or taken away, on made-up parts of the browser (W3C Media Capture and Streams; Web Audio API). */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { type ClapMessage, createMicrophone } from '../../src/input/microphone';
import type { HeardSound, Played, SourceState } from '../../src/state/listening/ports';

class Track extends EventTarget {
  muted = false;
  stopped = false;
  label = 'Quay room microphone';
  getSettings = () => ({ deviceId: 'q1', echoCancellation: false, noiseSuppression: false, autoGainControl: false });
  stop(): void {
    this.stopped = true;
  }
  become(muted: boolean): void {
    this.muted = muted;
    this.dispatchEvent(new Event(muted ? 'mute' : 'unmute'));
  }
}

class Context extends EventTarget {
  state = 'suspended';
  currentTime = 0;
  sampleRate = 48_000;
  audioWorklet = { addModule: async () => undefined };
  destination = {};
  become(state: string): void {
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }
  resume = async (): Promise<void> => this.become('running');
  close = async (): Promise<void> => this.become('closed');
}

class Node {
  static last: Node | null = null;
  port: { onmessage: ((event: { data: ClapMessage }) => void) | null } = { onmessage: null };
  constructor() {
    Node.last = this;
  }
  connect = (next: unknown): unknown => next;
}
class Plain {
  connect = (next: unknown): unknown => next;
}

async function bench() {
  vi.stubGlobal('AudioWorkletNode', Node);
  vi.stubGlobal('GainNode', Plain);
  vi.stubGlobal('MediaStreamAudioSourceNode', Plain);
  const tracks: Track[] = [];
  const contexts: Context[] = [];
  let nowMs = 1000;
  const microphone = createMicrophone({
    getUserMedia: async () => {
      const track = new Track();
      tracks.push(track);
      return { getAudioTracks: () => [track], getTracks: () => [track] } as unknown as MediaStream;
    },
    createContext: () => {
      const context = new Context();
      contexts.push(context);
      return context as unknown as AudioContext;
    },
    workletAddress: 'clap.js',
    now: () => nowMs,
  });
  const states: SourceState['kind'][] = [];
  const played: Played[] = [];
  const heard: HeardSound[] = [];
  microphone.onChange(() => states.push(microphone.state().kind));
  microphone.onPlayed((each) => played.push(each));
  microphone.onHeard?.((each) => heard.push(each));
  await microphone.open();
  const post = (data: ClapMessage): void => Node.last?.port.onmessage?.({ data });
  /** Both clocks go on; a context that sleeps stands still. */
  const pass = (seconds: number): void => {
    nowMs += 1000 * seconds;
    for (const context of contexts) if (context.state === 'running') context.currentTime += seconds;
  };
  return { microphone, tracks, contexts, states, played, heard, post, pass };
}

afterEach(() => vi.unstubAllGlobals());

describe('the microphone', () => {
  it('listens once it runs, and hands on claps and sound with their moments', async () => {
    const { microphone, played, heard, post, pass } = await bench();
    expect(microphone.state()).toMatchObject({ kind: 'listening', devices: [{ id: 'q1', name: 'Quay room microphone' }] });
    pass(1);
    post({ kind: 'onsets', frames: [24_000], strengths: [0.5] });
    post({ kind: 'sound', frame: 12_000, samples: new Float32Array(800) });
    expect(played).toEqual([{ kind: 'onset', strength: 0.5, at: 1500, coarse: false }]);
    expect(heard).toMatchObject([{ rate: 48_000, at: 1250 }]);
  });

  it('that is muted says so, holds its device, and listens again when it is unmuted', async () => {
    const { microphone, tracks, states } = await bench();
    tracks[0]?.become(true);
    expect(microphone.state()).toEqual({ kind: 'held', why: 'muted', devices: [{ id: 'q1', name: 'Quay room microphone' }] });
    expect(tracks[0]?.stopped).toBe(false);
    tracks[0]?.become(false);
    expect(states.slice(-2)).toEqual(['held', 'listening']);
  });

  it('that is muted can be asked for again: the old track is let go', async () => {
    const { microphone, tracks } = await bench();
    tracks[0]?.become(true);
    await microphone.open();
    expect(tracks.map(({ stopped }) => stopped)).toEqual([true, false]);
    expect(microphone.state().kind).toBe('listening');
    // What happens to the old one is no longer heard of.
    tracks[0]?.become(true);
    expect(microphone.state().kind).toBe('listening');
  });

  it.each(['suspended', 'interrupted'])(
    'whose sound is %s says so, wakes by a touch, and places claps by the clock as it then goes',
    async (asleep) => {
      const { microphone, contexts, tracks, played, post, pass } = await bench();
      pass(1);
      contexts[0]?.become(asleep);
      expect(microphone.state()).toMatchObject({ kind: 'held', why: 'asleep' });
      // Ten seconds in which the clock of the sound stands still.
      pass(10);
      await microphone.open();
      expect(microphone.state().kind).toBe('listening');
      expect(tracks).toHaveLength(1);
      pass(1);
      post({ kind: 'onsets', frames: [2 * 48_000], strengths: [0.5] });
      expect(played.map(({ at }) => at)).toEqual([13_000]);
    },
  );

  it('that wakes while it is muted is still muted; one that is taken away is lost, whatever it was before', async () => {
    const { microphone, contexts, tracks } = await bench();
    tracks[0]?.become(true);
    contexts[0]?.become('suspended');
    contexts[0]?.become('running');
    expect(microphone.state()).toMatchObject({ kind: 'held', why: 'muted' });
    tracks[0]?.dispatchEvent(new Event('ended'));
    expect(microphone.state()).toEqual({ kind: 'lost', device: 'Quay room microphone' });
    await microphone.open();
    expect(microphone.state().kind).toBe('listening');
    microphone.close();
    expect(tracks[1]?.stopped).toBe(true);
    expect(microphone.state().kind).toBe('off');
  });
});
