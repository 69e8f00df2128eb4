import type { Score } from '../music/score';
import type { ClockMap } from '../performance/clock-map';
import { toAudio } from '../performance/clock-map';
import type { Unrolled } from '../performance/occurrences';
import type { PartName } from '../performance/performance';
import type { TempoMap } from '../performance/tempo';
import type { AudioSeconds, PlayedNote, PlayedOnset, SongSeconds } from '../vocabulary';
import { assert, songSeconds } from '../vocabulary';

/*
 * A take is one attempt: what was asked for (a performance, entered somewhere, at a tempo) and what was played, both on the clock of
 * the song. The input makes it with `notesInSong` and `onsetsInSong`; `matchTake` (match.ts) puts a label on every stroke, and
 * `assess` (assess.ts) says what to work on. A take is plain data: it can be kept, replayed and judged again.
 */

/** A note or a clap that was played, on the clock of the song. */
export interface TakenNote {
  readonly at: SongSeconds;
  /** When it was let go; null while held, for claps, and where the input cannot tell. */
  readonly until: SongSeconds | null;
  /** MIDI note, or null for a clap or a tap. */
  readonly midi: number | null;
  /** 1 to 127. */
  readonly velocity: number;
}

/** What was asked for: a performance entered at a bar. A span of a programme fits. */
export interface TakenMusic extends Unrolled {
  /** Play tick at which it begins, 0 unless the music changed while it played. */
  readonly fromPlay: number;
}

/** How far the moments of a take can be trusted. */
export type TimingTrust =
  /** The delay of the device was measured and taken off: a constant offset is the player's own. */
  | 'calibrated'
  /** Not measured: a constant offset says nothing about the player. */
  | 'uncalibrated'
  /** Stamps were missing or repeated: single strokes are placed, milliseconds are not judged. */
  | 'coarse'
  /** Wireless or unstable output: nothing about timing is said. */
  | 'off';

/** One attempt. */
export interface Take {
  readonly music: TakenMusic;
  /** The score that `music.performance` was made from: knows chords and roles. Null in drills that have none. */
  readonly score: Score | null;
  /** Play ticks to seconds of the song, as it sounded. */
  readonly tempo: TempoMap;
  /** What is judged, in play ticks, [fromPlayTick, toPlayTick): usually a pass, several, or up to where the player stopped. */
  readonly fromPlayTick: number;
  readonly toPlayTick: number;
  /** The parts that the player plays: the hands of the piano, or `clave` when the clave is clapped. */
  readonly parts: readonly PartName[];
  /** Ascending by `at`; notes before and after what is judged do no harm. */
  readonly notes: readonly TakenNote[];
  /** False for claps and computer keys without notes: only the rhythm is judged. */
  readonly pitched: boolean;
  readonly timing: TimingTrust;
}

/** How moments of the input become moments of the song. */
export interface SongClock {
  readonly clocks: ClockMap;
  /** The moment of the audio clock at which song second 0 sounds. */
  readonly songZero: AudioSeconds;
  /** Delay of the input device, as calibrated (calibration.ts); taken off every moment. 0 when unknown. */
  readonly latencyMs: number;
}

/** Played notes on the clock of the song, ascending. */
export function notesInSong(notes: readonly PlayedNote[], clock: SongClock): TakenNote[] {
  const found = notes.map(({ midi, velocity, at, until }) => ({
    at: momentInSong(at, clock),
    until: until === null ? null : momentInSong(until, clock),
    midi,
    velocity,
  }));
  return found.sort(byMoment);
}

/** Claps on the clock of the song, ascending; strength 0 to 1 becomes velocity 1 to 127. */
export function onsetsInSong(onsets: readonly PlayedOnset[], clock: SongClock): TakenNote[] {
  const found = onsets.map(({ at, strength }) => ({
    at: momentInSong(at, clock),
    until: null,
    midi: null,
    velocity: Math.max(1, Math.min(127, Math.round(strength * 127))),
  }));
  return found.sort(byMoment);
}

/** A moment of the input on the clock of the song. */
export function momentInSong(at: PlayedNote['at'], { clocks, songZero, latencyMs }: SongClock): SongSeconds {
  return songSeconds(toAudio(clocks, at) - songZero - latencyMs / 1000);
}

/** The take with only [fromPlayTick, toPlayTick) judged. Throws when that is not inside the take. */
export function partOfTake(take: Take, fromPlayTick: number, toPlayTick: number): Take {
  assert(
    fromPlayTick >= take.fromPlayTick && toPlayTick <= take.toPlayTick && fromPlayTick < toPlayTick,
    `a part must lie in [${take.fromPlayTick}, ${take.toPlayTick}), got [${fromPlayTick}, ${toPlayTick})`,
  );
  return { ...take, fromPlayTick, toPlayTick };
}

const byMoment = (a: TakenNote, b: TakenNote): number => a.at - b.at || (a.midi ?? 0) - (b.midi ?? 0);
