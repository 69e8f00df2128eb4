import { type ClockPair, fitClocks, toInput } from '../performance/clock-map';
import type { NoteSource, SourceState } from '../state/listening/ports';
import { audioSeconds, inputMillis } from '../vocabulary';
import { createListeners } from './listeners';

/*
 * Claps through the microphone. An audio worklet finds the onsets and posts their frames; a line through readings of the
 * context's clock and the page's turns frames into moments. The sound itself, thinned, is handed on piece by piece, so that the band's
 * clicks can be found in it; nobody keeps more than a few seconds of it and nothing leaves the page. The device is let go as soon as
 * listening ends.
 */

/** What the worklet posts: onsets by frame, the thinned sound from a frame on, or once in a while how loud it is. */
export type ClapMessage =
  | { readonly kind: 'onsets'; readonly frames: readonly number[]; readonly strengths: readonly number[] }
  | { readonly kind: 'sound'; readonly frame: number; readonly samples: Float32Array }
  | { readonly kind: 'level'; readonly level: number; readonly ready: boolean };

/** What the microphone needs of the browser. */
export interface MicrophoneParts {
  /** Null where the browser, or a page without https, has none. */
  readonly getUserMedia: ((constraints: MediaStreamConstraints) => Promise<MediaStream>) | null;
  readonly createContext: () => AudioContext;
  /** Address of the worklet, of our own origin. */
  readonly workletAddress: string;
  readonly now: () => number;
}

/** Voice processing removes clicks and claps; all of it is asked to be off, and read back. */
const CONSTRAINTS: MediaStreamConstraints = {
  audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: 1 },
};
const CLOCK_READINGS = 40;
const CLOCK_EVERY_MS = 500;

/** The microphone as a source of onsets. */
export function createMicrophone({ getUserMedia, createContext, workletAddress, now }: MicrophoneParts): NoteSource {
  const { changed, played, heard, ...listeners } = createListeners();
  let state: SourceState = { kind: 'off' };
  let level = 0;
  let session: { readonly stream: MediaStream; readonly context: AudioContext; readonly readings: ReturnType<typeof setInterval> } | null =
    null;
  let pairs: ClockPair[] = [];
  let opening = 0;

  const become = (next: SourceState): void => {
    state = next;
    changed();
  };
  const readClocks = (context: AudioContext): void => {
    // A context that sleeps stands still: such a reading would bend the line.
    if (context.state !== 'running') return;
    pairs.push({ audio: audioSeconds(context.currentTime), input: inputMillis(now()) });
    if (pairs.length > CLOCK_READINGS) pairs.shift();
  };
  const hear = (context: AudioContext, message: ClapMessage): void => {
    if (message.kind === 'level') {
      level = message.level;
      return;
    }
    if (pairs.length === 0) readClocks(context);
    if (pairs.length === 0) return;
    const clocks = fitClocks(pairs);
    const momentOf = (frame: number) => toInput(clocks, audioSeconds(frame / context.sampleRate));
    if (message.kind === 'sound') {
      heard({ samples: message.samples, rate: context.sampleRate, at: momentOf(message.frame) });
      return;
    }
    message.frames.forEach((frame, index) => {
      played({ kind: 'onset', strength: message.strengths[index] ?? 0.5, at: momentOf(frame), coarse: false });
    });
  };
  const letGo = (): void => {
    if (!session) return;
    const { stream, context, readings } = session;
    session = null;
    level = 0;
    clearInterval(readings);
    for (const track of stream.getTracks()) track.stop();
    void context.close().catch(() => undefined);
  };

  const listenTo = async (stream: MediaStream): Promise<void> => {
    const [track] = stream.getAudioTracks();
    if (!track) throw new Error('the browser gave a stream without sound');
    const context = createContext();
    pairs = [];
    session = { stream, context, readings: setInterval(() => readClocks(context), CLOCK_EVERY_MS) };
    await Promise.all([context.resume(), context.audioWorklet.addModule(workletAddress)]);
    const node = new AudioWorkletNode(context, 'clap-onsets', { numberOfInputs: 1, numberOfOutputs: 1, channelCount: 1 });
    node.port.onmessage = ({ data }: MessageEvent<ClapMessage>) => hear(context, data);
    const silent = new GainNode(context, { gain: 0 });
    // Only what leads to the output is computed.
    new MediaStreamAudioSourceNode(context, { mediaStream: stream }).connect(node).connect(silent).connect(context.destination);
    const gone = (): void => {
      if (session?.stream !== stream) return;
      letGo();
      become({ kind: 'lost', device: track.label || 'microphone' });
    };
    track.addEventListener('ended', gone);
    /** Says whether the microphone hears, whenever that may have changed. */
    const look = (): void => {
      if (session?.stream !== stream) return;
      const next = hearing(track, context);
      if (state.kind === 'held' && next.kind === 'listening') pairs = [];
      if (next.kind === 'held') level = 0;
      if (next.kind !== state.kind || (next.kind === 'held' && state.kind === 'held' && next.why !== state.why)) become(next);
    };
    track.addEventListener('mute', look);
    track.addEventListener('unmute', look);
    context.addEventListener('statechange', look);
    look();
  };

  return {
    name: 'microphone',
    async open() {
      if (state.kind === 'asking' || state.kind === 'listening') return;
      // A sleeping context wakes inside a gesture; a muted microphone is asked for anew.
      if (state.kind === 'held' && state.why === 'asleep') return session?.context.resume();
      letGo();
      if (getUserMedia === null) return become({ kind: 'missing' });
      become({ kind: 'asking' });
      opening += 1;
      const mine = opening;
      try {
        const stream = await getUserMedia(CONSTRAINTS);
        if (mine !== opening) for (const track of stream.getTracks()) track.stop();
        else await listenTo(stream);
      } catch (error) {
        letGo();
        if (mine === opening) become(failure(error));
      }
    },
    close() {
      opening += 1;
      letGo();
      become({ kind: 'off' });
    },
    state: () => state,
    level: () => level,
    ...listeners,
  };
}

/** What a microphone that was opened can be said to do now. */
function hearing(track: MediaStreamTrack, context: AudioContext): SourceState {
  const { deviceId = 'microphone', echoCancellation, noiseSuppression, autoGainControl } = track.getSettings();
  const devices = [{ id: deviceId, name: track.label || 'microphone' }];
  if (track.muted) return { kind: 'held', why: 'muted', devices };
  if (context.state !== 'running') return { kind: 'held', why: 'asleep', devices };
  return {
    kind: 'listening',
    devices,
    voiceProcessing: [echoCancellation, noiseSuppression, autoGainControl].some((each) => each !== undefined && each !== false),
    rate: context.sampleRate,
  };
}

function failure(error: unknown): SourceState {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return { kind: 'refused' };
  if (name === 'NotFoundError' || name === 'OverconstrainedError') return { kind: 'no device' };
  return { kind: 'failed', reason: error instanceof Error ? error.message : String(error) };
}
