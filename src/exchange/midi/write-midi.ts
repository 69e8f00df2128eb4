import type { Score } from '../../music/score';
import { type Feel, type FeelVoice, offsetTicks, STRAIGHT, stepFromTwoSide, voiceOf } from '../../performance/feel';
import { blowsOf } from '../../performance/percussion-touch';
import { type DrumStroke, type HalfNotesPerMinute, type Stroke, TICKS_PER_QUARTER } from '../../vocabulary';
import { headerChunk, programChange, trackName } from './bytes';
import { conductorEvents, midiName } from './conductor';
import { drumKey } from './drum-keys';
import { noteEvents, type SoundingNote } from './notes';
import { type TrackEvent, trackChunk } from './track';

/** What may be chosen about a MIDI file. */
export interface MidiFileOptions {
  /** Another tempo than the score's for its first bar; tempi of later sections are scaled with it. */
  readonly tempo?: HalfNotesPerMinute;
  /** Notes exactly where they are written unless a feel is asked for. */
  readonly feel?: Feel;
}

/** The type of the file, for saving it. */
export const MIDI_TYPE = 'audio/midi';

/** Channels count from 0, so channel 10, the percussion channel of General MIDI, is 9. */
const DRUM_CHANNEL = 9;
/** Programs of General MIDI level 1 (RP-003), counted from 0: acoustic grand piano is 1, acoustic bass 33. */
const PIANO = 0;
const ACOUSTIC_BASS = 32;
/** How long a drum stroke is held; its sound does not depend on it. */
const DRUM_TICKS = 120;

/**
 * A Standard MIDI File, type 1, 480 ticks to the quarter: track 0 with title, tempo, meter, key and markers, then right hand, left
 * hand, bass, clave and each percussion part (the drums on channel 10). A range starts at tick 0; strokes of the first pass alone are
 * included once; what would ring past the last bar ends with it, so the file is as long as the music. Parts without strokes are left out.
 * Source: Standard MIDI Files 1.0, RP-001.
 */
export function writeMidi(score: Score, options: MidiFileOptions = {}): Uint8Array {
  const length = score.toTick - score.fromTick;
  const firstTempo = score.bars[0]?.tempo ?? score.tempo;
  const feel = options.feel ?? STRAIGHT;
  /** Where a stroke is put: its place from the start of the file, moved by the feel but never before the start. */
  const placeOf: PlaceOf = (tick, voice) => {
    const notated = tick - score.fromTick;
    return notated < 0 ? notated : Math.max(0, notated + offsetTicks(feel, voice, stepFromTwoSide(score, tick)));
  };
  const tracks = [
    trackChunk(conductorEvents(score, (options.tempo ?? score.tempo) / firstTempo), length),
    ...pitched('Piano RH', 0, PIANO, score.parts.rightHand, score, placeOf),
    ...pitched('Piano LH', 1, PIANO, score.parts.leftHand, score, placeOf),
    ...pitched('Bass', 2, ACOUSTIC_BASS, score.parts.bass, score, placeOf),
    ...drums('Clave', 'clave', score.parts.clave, score, placeOf),
    ...Object.entries(score.parts.percussion).flatMap(([part, strokes]) => drums(titled(part), part, strokes, score, placeOf)),
  ];
  const chunks = [Uint8Array.from(headerChunk(tracks.length, TICKS_PER_QUARTER)), ...tracks];
  const file = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    file.set(chunk, at);
    at += chunk.length;
  }
  return file;
}

type PlaceOf = (tick: number, voice: FeelVoice | null) => number;

function pitched(name: string, channel: number, program: number, strokes: readonly Stroke[], score: Score, placeOf: PlaceOf): Uint8Array[] {
  if (strokes.length === 0) return [];
  const notes = strokes.flatMap((stroke) =>
    stroke.midi.map((midi) => ({
      tick: placeOf(stroke.tick, name === 'Bass' ? 'bass' : 'tres'),
      soundingTicks: stroke.soundingTicks,
      midi,
      velocity: stroke.velocity,
    })),
  );
  return [part(name, notes, channel, score, [{ tick: 0, bytes: programChange(channel, program) }])];
}

function drums(name: string, partName: string, strokes: readonly DrumStroke[], score: Score, placeOf: PlaceOf): Uint8Array[] {
  if (strokes.length === 0) return [];
  const notes = strokes.flatMap(({ tick, stroke }) =>
    blowsOf(stroke).map(({ after, velocity }) => ({
      tick: placeOf(tick, partName === 'clave' ? 'clave' : voiceOf('percussion', `${partName} ${stroke}`)) + after,
      soundingTicks: DRUM_TICKS,
      midi: drumKey(partName, stroke),
      velocity,
    })),
  );
  return [part(name, notes, DRUM_CHANNEL, score, [])];
}

function part(name: string, notes: readonly SoundingNote[], channel: number, score: Score, setup: readonly TrackEvent[]): Uint8Array {
  const length = score.toTick - score.fromTick;
  const inside = notes.filter((note) => note.tick >= 0 && note.tick < length);
  return trackChunk([{ tick: 0, bytes: trackName(midiName(name, 'Part')) }, ...setup, ...noteEvents(inside, channel, length)], length);
}

const titled = (part: string): string => part.charAt(0).toUpperCase() + part.slice(1);
