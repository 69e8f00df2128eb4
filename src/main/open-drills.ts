import type { Desk } from '../state/desk';
import { createDrills, type DrillsRoom } from '../state/drills/drills';
import type { Listening } from '../state/listening/listening-state';

/** Joins the drills to the desk, to what listens, and to the journal. Fetched when drills are first wanted. */
export const openDrills = (desk: Desk, listening: Listening): DrillsRoom =>
  createDrills({
    desk,
    listening,
    onEnd: (...how) =>
      // A journal that cannot be fetched costs its line, never the drill.
      void desk.rooms.journal().then(
        (journal) => journal.drill(...how),
        () => undefined,
      ),
  });
