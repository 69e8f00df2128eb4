import { noteOff, noteOn } from './bytes';
import type { TrackEvent } from './track';

/** One sounding note; ticks from the start of the file. */
export interface SoundingNote {
  readonly tick: number;
  readonly soundingTicks: number;
  readonly midi: number;
  readonly velocity: number;
}

/**
 * Note-ons and note-offs of one channel. A note ends at the latest where the same pitch begins again and where the music ends, so
 * no pitch ever overlaps itself; at an equal tick the end comes first. Of two notes of one pitch at one tick the louder is kept.
 */
export function noteEvents(notes: readonly SoundingNote[], channel: number, endTick: number): TrackEvent[] {
  const ons: TrackEvent[] = [];
  const offs: TrackEvent[] = [];
  const ordered = notes.toSorted((a, b) => a.midi - b.midi || a.tick - b.tick || b.velocity - a.velocity);
  const onsets = ordered.filter((note, i) => note.midi !== ordered[i - 1]?.midi || note.tick !== ordered[i - 1]?.tick);
  onsets.forEach((note, i) => {
    const next = onsets[i + 1];
    const limit = next?.midi === note.midi ? Math.min(next.tick, endTick) : endTick;
    const end = Math.min(note.tick + Math.max(1, Math.round(note.soundingTicks)), limit);
    if (end <= note.tick) return;
    ons.push({ tick: note.tick, bytes: noteOn(channel, note.midi, note.velocity) });
    offs.push({ tick: end, bytes: noteOff(channel, note.midi) });
  });
  return [...offs, ...ons];
}
