import { browserArchiveParts, createArchive } from '../device/archive';
import type { Desk } from '../state/desk';
import { createLibrary, type Library } from '../state/library/library';
import type { FileSaver, Storage } from '../state/ports';
import { LIBRARY_WORDS } from '../words/library';

/** Joins the library to the desk and to this device. Fetched when the shelf is first shown. */
export function openLibrary(desk: Desk, storage: Storage, saver: FileSaver, newId: () => string): Promise<Library> {
  return createLibrary({
    desk,
    storage,
    archive: createArchive(browserArchiveParts()),
    saver,
    readSheet: async () => ({ ok: false, faults: [{ sentence: LIBRARY_WORDS.noSheets }] }),
    now: Date.now,
    newId,
  });
}
