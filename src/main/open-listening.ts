import { CLAP_WORKLET } from '../device/worklets/address';
import { createInputs } from '../input/inputs';
import type { Desk } from '../state/desk';
import { judgeStretch } from '../state/listening/judge';
import { createListening } from '../state/listening/listening';
import type { Player, Storage } from '../state/ports';

/** Joins what listens to the player, the inputs and the desk. Fetched when someone is first to be listened to. */
export function openListening(desk: Desk, player: () => Player | null, storage: Storage, page: Document) {
  const listening = createListening({
    desk,
    player,
    ...createInputs(window, CLAP_WORKLET),
    storage,
    judge: judgeStretch,
    now: Date.now,
    every: (ms, action) => {
      const timer = setInterval(action, ms);
      return () => clearInterval(timer);
    },
    hidden: () => page.hidden,
  });
  listening.store.subscribe((now, before) => {
    if (now.report === before.report && now.ratings === before.ratings) return;
    // The music goes on when the journal cannot be fetched; the next pass asks again.
    void desk.rooms.journal().then(
      (journal) => journal.hear(now, before),
      () => undefined,
    );
  });
  // Fetched now: what is said about the first pass is then written down under what is set when it is said.
  void desk.rooms.journal().catch(() => undefined);
  return listening;
}
