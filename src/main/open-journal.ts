import { readChart } from '../music/chart/read';
import { arrange } from '../music/score';
import type { Desk } from '../state/desk';
import { createJournal, type Journal } from '../state/journal/journal';
import type { FileSaver, Storage } from '../state/ports';
import { JOURNAL } from './archive';

/** Joins the journal to the desk and to this device. Fetched when there is something to write down, or when it is opened. */
export function openJournal(desk: Desk, storage: Storage, saver: FileSaver, newId: () => string): Promise<Journal> {
  return createJournal({
    desk,
    journal: JOURNAL,
    storage,
    saver,
    stages: { readChart, arrange },
    now: Date.now,
    newId,
    zone: (at) => -new Date(at).getTimezoneOffset(),
    openAssignments: async (journal) =>
      (await import('../state/assignment/assignment-room')).createAssignmentRoom({
        ...{ desk, storage, saver, journal },
        now: Date.now,
      }),
    every: (ms, action) => {
      const timer = setInterval(action, ms);
      return () => clearInterval(timer);
    },
  });
}
