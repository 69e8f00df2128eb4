import type { ClockPair } from '../../performance/clock-map';
import type { PerformedEvent } from '../../performance/performance';
import type { Span } from '../../performance/programme';
import type { TempoMap } from '../../performance/tempo';
import type { AudioSeconds, InputMillis } from '../../vocabulary';

/** What listening asks of the world: things that play notes or make onsets, and things that notes can be sent to. */

/** The ways in which a person can play to the page. */
export type SourceName = 'midi' | 'keys' | 'microphone';

/** One thing that a person did, handed over the moment it happens; `coarse` where its time is only known roughly. */
export type Played =
  | { readonly kind: 'note on'; readonly midi: number; readonly velocity: number; readonly at: InputMillis; readonly coarse: boolean }
  | { readonly kind: 'note off'; readonly midi: number; readonly at: InputMillis }
  | { readonly kind: 'pedal'; readonly down: boolean; readonly at: InputMillis }
  /** A clap or a tap; `strength` from 0 to 1. */
  | { readonly kind: 'onset'; readonly strength: number; readonly at: InputMillis; readonly coarse: boolean };

/** A piece of what the microphone hears, thinned (practice/thin.ts), for finding the band's own clicks in it. */
export interface HeardSound {
  readonly samples: Float32Array;
  /** Frames a second of the stream before it was thinned. */
  readonly rate: number;
  /** Moment of the first sample. */
  readonly at: InputMillis;
}

/** The samples that an unpitched sound of the band is made of. */
export interface ClickSound {
  /** As events call it, such as `clave`. */
  readonly name: string;
  readonly samples: Float32Array;
  /** Frames a second. */
  readonly rate: number;
}

/** A device of a source: calibration is kept under its name. */
export interface InputDevice {
  readonly id: string;
  readonly name: string;
}

/** Where a source stands. Everything but `listening` needs a sentence and a way forward. */
export type SourceState =
  | { readonly kind: 'off' }
  /** The browser asks the person. */
  | { readonly kind: 'asking' }
  | { readonly kind: 'listening'; readonly devices: readonly InputDevice[]; readonly voiceProcessing?: boolean; readonly rate?: number }
  /** Allowed, but nothing is plugged in; it listens for a plug. */
  | { readonly kind: 'no device' }
  | { readonly kind: 'refused' }
  /** This browser, or this page without https, does not have it. */
  | { readonly kind: 'missing' }
  /** It is there but hears nothing: the system has muted it, or the browser has put its sound to sleep. It comes back by itself, or by `open` inside a gesture. */
  | { readonly kind: 'held'; readonly why: 'muted' | 'asleep'; readonly devices: readonly InputDevice[] }
  /** It was there and went away: unplugged, switched off, or the permission was taken back. */
  | { readonly kind: 'lost'; readonly device: string }
  | { readonly kind: 'failed'; readonly reason: string };

/** Something that a person plays on. Opened only when it is wanted; a closed one holds no device. */
export interface NoteSource {
  readonly name: SourceName;
  /** Asks for the device where that is needed; call it inside a gesture. How it went is in `state`. */
  open(): Promise<void>;
  /** Lets held notes go and the device with them. */
  close(): void;
  state(): SourceState;
  /** Loudness now, 0 to 1, for a meter; 0 where there is none. */
  level(): number;
  onChange(listener: () => void): () => void;
  onPlayed(listener: (played: Played) => void): () => void;
  /** The microphone hands over what it hears, piece by piece and without gaps; other sources have nothing to hand over. */
  onHeard?(listener: (heard: HeardSound) => void): () => void;
}

/** A piano that notes can be sent to. */
export interface NoteSink {
  outputs(): readonly InputDevice[];
  /** Sends a note to start at `at` and end at `until`, both on the clock of the inputs. */
  send(output: string, midi: number, velocity: number, at: InputMillis, until: InputMillis): void;
  /** Ends everything that sounds or is on its way. */
  silence(): void;
}

/** A sound handed to the audio device, with its moment there. */
export interface SoundOnItsWay {
  /** Unlike any other sound's since Play was pressed. */
  readonly key: string;
  readonly at: AudioSeconds;
  readonly seconds: number;
  readonly event: PerformedEvent;
  readonly pass: number;
  readonly countIn: boolean;
}

/** The clocks at one moment: what is heard now, the clock of the inputs, and what the output admits to. */
export interface OutputClock {
  readonly pair: ClockPair;
  /** Milliseconds from computing to hearing; null where the browser does not tell. */
  readonly latencyMs: number | null;
  /** Frames a second of the output. */
  readonly rate: number;
}

/** What has been handed to the device since Play was pressed; what sounded more than some seconds ago may be left out. */
export interface SoundingMusic {
  /** The moment of the audio clock at which second 0 of the song sounds. */
  readonly songZero: AudioSeconds;
  /** Play ticks to seconds of the song. */
  readonly tempo: TempoMap;
  readonly spans: readonly Span[];
  /** Play tick from which on nothing has been handed over yet. */
  readonly handedTo: number;
}
