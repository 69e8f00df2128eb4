import { browserArchiveParts, createArchive } from '../device/archive';
import { readScoreInThread } from '../device/musicxml-reader';
import type { Desk } from '../state/desk';
import { createMusicXmlImport, sheetReader } from '../state/import/import-musicxml';
import { createLibrary, type Library } from '../state/library/library';
import type { FileSaver, Storage } from '../state/ports';

/** Joins the library to the desk and to this device. Fetched when the shelf is first shown. */
export function openLibrary(desk: Desk, storage: Storage, saver: FileSaver, newId: () => string): Promise<Library> {
  return createLibrary({
    desk,
    storage,
    archive: createArchive(browserArchiveParts()),
    saver,
    readSheet: sheetReader(createMusicXmlImport(readScoreInThread)),
    now: Date.now,
    newId,
  });
}
