import type { InputMillis, PlayedNote, PlayedOnset } from '../../vocabulary';
import type { Played } from './ports';

/** Everything played since listening began, less what has been judged long ago; adding to it takes no time worth mentioning. */
export interface PlayedNotes {
  hear(played: Played): void;
  notes(): readonly PlayedNote[];
  onsets(): readonly PlayedOnset[];
  /** Events in [from, to), and how many of them carry a time that is only roughly known. */
  count(from: InputMillis, to: InputMillis): { readonly heard: number; readonly coarse: number };
  forgetBefore(at: InputMillis): void;
}

interface Note {
  readonly midi: number;
  readonly velocity: number;
  readonly at: InputMillis;
  readonly coarse: boolean;
  until: InputMillis | null;
}

/** No take is longer than this many events: half an hour of sixteenths with both hands. Older ones go. */
const MOST_EVENTS = 100_000;

/** Nothing played. */
export function createPlayedNotes(): PlayedNotes {
  let notes: Note[] = [];
  let onsets: (PlayedOnset & { readonly coarse: boolean })[] = [];
  const held = new Map<number, Note>();
  /** Let go while the pedal was down: they ring until it comes up. */
  let ringing: Note[] = [];
  let pedal = false;
  return {
    hear(played) {
      switch (played.kind) {
        case 'note on': {
          // The same key twice without a release: the first ends where the second begins.
          for (const note of [held.get(played.midi), ...ringing]) if (note?.midi === played.midi) note.until = played.at;
          ringing = ringing.filter(({ until }) => until === null);
          const { midi, velocity, at, coarse } = played;
          const note: Note = { midi, velocity, at, coarse, until: null };
          held.set(midi, note);
          notes.push(note);
          break;
        }
        case 'note off': {
          const note = held.get(played.midi);
          if (note && pedal) ringing.push(note);
          else if (note) note.until = played.at;
          held.delete(played.midi);
          break;
        }
        case 'pedal':
          pedal = played.down;
          if (pedal) break;
          for (const note of ringing) note.until = played.at;
          ringing = [];
          break;
        case 'onset':
          onsets.push({ at: played.at, strength: played.strength, coarse: played.coarse });
          break;
      }
      if (notes.length > MOST_EVENTS) notes = notes.slice(MOST_EVENTS / 2);
      if (onsets.length > MOST_EVENTS) onsets = onsets.slice(MOST_EVENTS / 2);
    },
    notes: () => notes,
    onsets: () => onsets,
    count(from, to) {
      const inside = [...notes, ...onsets].filter(({ at }) => at >= from && at < to);
      return { heard: inside.length, coarse: inside.filter(({ coarse }) => coarse).length };
    },
    forgetBefore(before) {
      notes = notes.filter(({ at, until }) => at >= before || until === null);
      onsets = onsets.filter(({ at }) => at >= before);
    },
  };
}
