import { deviceFacts } from '../device/device-facts';
import { createPersistence } from '../device/persistence';
import type { Desk } from '../state/desk';
import type { FileSaver, Storage } from '../state/ports';
import { createSafety, type Safety } from '../state/safety/safety';
import { ARCHIVE, JOURNAL } from './archive';

/** Joins safe keeping to the desk and to this device. Fetched when it is first shown. */
export function openSafety(desk: Desk, storage: Storage, saver: FileSaver, newId: () => string): Promise<Safety> {
  return createSafety({
    desk,
    archive: ARCHIVE,
    journal: JOURNAL,
    storage,
    saver,
    persistence: createPersistence(navigator.storage),
    deviceFacts,
    copy: (text) =>
      navigator.clipboard?.writeText(text).then(
        () => true,
        () => false,
      ) ?? Promise.resolve(false),
    reload: () => window.location.reload(),
    refresh: async () => {
      const library = await desk.rooms.library();
      await library.meet();
      await library.meetSets();
    },
    now: Date.now,
    newId,
  });
}
