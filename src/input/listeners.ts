import type { NoteSource, Played } from '../state/listening/ports';

/** Who listens to a source, and how they are told. */
export interface Listeners {
  readonly onChange: NoteSource['onChange'];
  readonly onPlayed: NoteSource['onPlayed'];
  readonly changed: () => void;
  readonly played: (played: Played) => void;
}

/** Nobody, so far. */
export function createListeners(): Listeners {
  const changes = new Set<() => void>();
  const hearers = new Set<(played: Played) => void>();
  return {
    onChange(listener) {
      changes.add(listener);
      return () => changes.delete(listener);
    },
    onPlayed(listener) {
      hearers.add(listener);
      return () => hearers.delete(listener);
    },
    changed: () => {
      for (const listener of changes) listener();
    },
    played: (played) => {
      for (const hear of hearers) hear(played);
    },
  };
}
