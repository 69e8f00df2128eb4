import type { Ensemble } from '../performance/ensemble';
import type { PartName, Performance } from '../performance/performance';
import type { VampState } from '../performance/vamps';
import type { HalfNotesPerMinute } from '../vocabulary';
import type { ClickSound, OutputClock, SoundingMusic, SoundOnItsWay } from './listening/ports';

/** What the state asks of the world outside. Each port has a real side (audio, device) and a recorder for tests. */

/** Where the sound is. Anything but `running` needs a gesture to resume. */
export type SoundState =
  | { readonly kind: 'off' }
  | { readonly kind: 'starting' }
  /** `missing` names the recording that could not be used when some sounds are made by rule for good. */
  | { readonly kind: 'running'; readonly samples: 'loading' | 'ready' | 'synthesised'; readonly missing?: string }
  | { readonly kind: 'blocked'; readonly reason: string };

/** What the transport does. */
export type TransportState =
  | { readonly kind: 'stopped' }
  | { readonly kind: 'starting' }
  | { readonly kind: 'counting in' }
  | { readonly kind: 'playing' };

/** What is heard at this moment, output latency included. */
export interface Heard {
  /** Score tick, fractional. */
  readonly tick: number;
  /** Passes completed, from 0. */
  readonly pass: number;
  /** Beats left of the count-in (half of a half note each), or null when the music sounds. */
  readonly countIn: number | null;
  /** The performance that sounds; after a live change it is the new one only from the cycle where the change lands. */
  readonly performance: Performance;
}

/** The open vamp that is heard. */
export interface SoundingVamp {
  readonly fromTick: number;
  /** Exclusive. */
  readonly toTick: number;
  readonly state: VampState;
}

/** What to play, and from where. */
export interface PlayRequest {
  readonly performance: Performance;
  /** Where to start, at a bar. */
  readonly fromTick: number;
  readonly tempo: HalfNotesPerMinute;
  /** Bars of clave before the music, on the right side of the clave. */
  readonly countInBars: 0 | 1 | 2;
}

/** Balance: linear gain 0 to 1 per part, and mutes; the ceiling limits the sum. */
export interface Mix {
  readonly parts: Readonly<Record<PartName, { readonly level: number; readonly muted: boolean }>>;
  /** Overall loudness, 0 to 1. */
  readonly ceiling: number;
  /** Cents above A = 440, −50 to 50. */
  readonly tuningCents: number;
}

/** Plays performances. Made once for the life of the page. */
export interface Player {
  /** Starts the music; call it inside a user's gesture. Sound follows within a second: samples if they are there, else synthesised. */
  play(request: PlayRequest): void;
  /** Stops at once: silence within 50 ms. */
  stop(): void;
  /** Replaces what plays, from the next cycle boundary on. Does nothing when stopped. Returns the score tick in the new performance where it lands, or null. */
  change(performance: Performance): number | null;
  /**
   * Asks to leave the open vamp that is heard. Returns what happens then: it is left at the end of this round (`leaving`) or, when the
   * strokes that lead on are already on their way, after one more; null when no vamp is heard.
   */
  cue(): Exclude<VampState, 'holding'> | null;
  /** The open vamp that is heard and what it does, or null; read once a frame. */
  vamp(): SoundingVamp | null;
  /** Takes effect on the next sound that is not yet on its way. */
  setTempo(tempo: HalfNotesPerMinute): void;
  setMix(mix: Mix): void;
  /** What the band leaves out from the next sound on. */
  setEnsemble(ensemble: Ensemble): void;
  /** Sounds a stroke at once, for touching a note on screen. */
  sound(midi: readonly number[], velocity: number): void;
  /** Sounds a key at once and until `letGo`; struck again, it begins anew. */
  hold(midi: number, velocity: number): void;
  /** Damps a key that was held; does nothing for one that was not. */
  letGo(midi: number): void;
  /** Read once a frame by the playhead; null when stopped. */
  heard(): Heard | null;
  /** Both clocks now, for mapping what is played to what is heard; null before the sound runs. */
  clock(): OutputClock | null;
  /** Hears of every sound as it is handed to the device, in order of its moment there. Returns the way to stop. */
  onSound(listener: (sound: SoundOnItsWay) => void): () => void;
  /** What plays and when, for judging what is played to it; null when stopped. */
  music(): SoundingMusic | null;
  /** The samples of an unpitched sound, by the name that events give it; null when nothing would sound. */
  clickSound(drum: string): ClickSound | null;
  soundState(): SoundState;
  transportState(): TransportState;
  /** Called when the sound or transport state changes, never per frame. Returns the way to stop listening. */
  onChange(listener: () => void): () => void;
}

/** Does something after a while, unless it is called off by what it gives back; the browser's clock in the page, a hand-turned one in tests. */
export interface Timer {
  after(ms: number, action: () => void): () => void;
}

/** Keeps text by key on this device. Every write says whether it was kept; writes of one key reach the device in the order they were asked for. */
export interface Storage {
  read(key: string): Promise<StorageRead>;
  write(key: string, text: string): Promise<StorageWrite>;
  /** Called when another tab wrote `key`. */
  onOtherTab(listener: (key: string) => void): () => void;
  /** Called when a newer version of the page is found to have changed what is kept here; from then on this one is refused. At once when it is known. */
  onNewer(listener: () => void): () => void;
  /** Tells other tabs that everything was deleted: from then on theirs refuse to write, so that nothing comes back by halves. */
  tellCleared(): void;
  /** Called when another tab has deleted everything. */
  onCleared(listener: () => void): () => void;
}
/** What reading gave: the text, nothing kept so far, or the reason why the device refused. */
export type StorageRead =
  | { readonly kind: 'found'; readonly text: string }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'refused'; readonly reason: string };
/** Whether a write was kept; when the device refused (full, switched off) its reason. */
export type StorageWrite = { readonly kind: 'kept' } | { readonly kind: 'refused'; readonly reason: string };

/** Everything that is kept on this device, taken as a whole: for backups and for clearing up. */
export interface Archive {
  /** Every record by its key; throws with the device's reason when it refuses. */
  all(): Promise<ReadonlyMap<string, string>>;
  remove(keys: readonly string[]): Promise<void>;
  /** Removes every record. */
  clear(): Promise<void>;
}

/** One entry of the journal, as it is kept: never changed once it is written. */
export interface JournalEntry {
  /** Never given twice on any device. */
  readonly id: string;
  /** When it was written, in milliseconds since 1970. */
  readonly at: number;
  /** JSON of what happened; read by who wrote it. */
  readonly text: string;
}

/** Keeps the journal on this device, in the order of time. */
export interface JournalStore {
  /** Adds entries; those whose id is there already are left as they are. Says whether all were kept. */
  add(entries: readonly JournalEntry[]): Promise<StorageWrite>;
  /** Entries with `at` in [from, to), oldest first; throws with the device's reason when it refuses. */
  between(from: number, to: number): Promise<readonly JournalEntry[]>;
  remove(ids: readonly string[]): Promise<void>;
  clear(): Promise<void>;
}

/** The copy of the page on this device, which works without a connection. `update`: a new version lies ready and waits. */
export type OfflineState = 'off' | 'unsupported' | 'preparing' | 'ready' | 'update' | 'failed';

/** Makes the copy, lets a new one take over, clears it away. */
export interface OfflineCopy {
  onChange(listener: (state: OfflineState) => void): void;
  make(): Promise<void>;
  /** The page is loaded anew once the new version has taken over. */
  takeUpdate(): void;
  clear(): Promise<void>;
}

/** Hands a file to the person. */
export interface FileSaver {
  save(name: string, type: string, bytes: Uint8Array): void;
}
