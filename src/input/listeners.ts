import type { HeardSound, NoteSource, Played } from '../state/listening/ports';

/** Who listens to a source, and how they are told. */
export interface Listeners {
  readonly onChange: NoteSource['onChange'];
  readonly onPlayed: NoteSource['onPlayed'];
  readonly onHeard: NonNullable<NoteSource['onHeard']>;
  readonly changed: () => void;
  readonly played: (played: Played) => void;
  readonly heard: (heard: HeardSound) => void;
}

/** Nobody, so far. */
export function createListeners(): Listeners {
  const changes = new Set<() => void>();
  const hearers = new Set<(played: Played) => void>();
  const ears = new Set<(heard: HeardSound) => void>();
  return {
    onChange(listener) {
      changes.add(listener);
      return () => changes.delete(listener);
    },
    onPlayed(listener) {
      hearers.add(listener);
      return () => hearers.delete(listener);
    },
    onHeard(listener) {
      ears.add(listener);
      return () => ears.delete(listener);
    },
    changed: () => {
      for (const listener of changes) listener();
    },
    played: (played) => {
      for (const hear of hearers) hear(played);
    },
    heard: (heard) => {
      for (const ear of ears) ear(heard);
    },
  };
}
