import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { Journal } from '../../state/journal/journal';
import type { JournalState } from '../../state/journal/journal-state';
import type { SetList } from '../../state/library/set-list';
import { useDeskItself } from '../app/desk-context';
import { useRoom } from '../app/use-room';

/** The journal, read anew each time that its place is entered; null until it is there. */
export function useJournal(): Journal | null {
  const journal = useRoom(useDeskItself().rooms.journal);
  useEffect(() => {
    if (journal?.store.getState().loaded) void journal.meet();
  }, [journal]);
  return journal;
}

/** One value out of the journal's state. */
export function useJournalState<Value>(journal: Journal, select: (state: JournalState) => Value): Value {
  return useStore(journal.store, select);
}

/** Noon of a set list's day, as a moment, or null without one. */
export const momentOfSet = ({ date }: SetList): number | null => (date === null ? null : Date.parse(`${date}T12:00:00`));
