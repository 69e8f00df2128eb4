import { readScoreInThread } from '../device/musicxml-reader';
import { speechNow } from '../exchange/speech';
import type { Desk } from '../state/desk';
import { createMusicXmlImport, sheetReader } from '../state/import/import-musicxml';
import { createLibrary, type Library } from '../state/library/library';
import type { FileSaver, Storage } from '../state/ports';
import { ARCHIVE } from './archive';

/** Joins the library to the desk and to this device. Fetched when the shelf is first shown. */
export async function openLibrary(desk: Desk, storage: Storage, saver: FileSaver, newId: () => string): Promise<Library> {
  // The shelf shows the whole demo book or, when that cannot be fetched, what is here of it.
  await desk.fetchDemos().catch(() => undefined);
  return createLibrary({
    desk,
    storage,
    archive: ARCHIVE,
    saver,
    readSheet: sheetReader(createMusicXmlImport((file) => readScoreInThread({ ...file, speech: speechNow() }))),
    considerBackup: async (name, text) => (await desk.rooms.safety()).considerRestore(name, text),
    considerAssignments: async (files) => {
      (await (await desk.rooms.journal()).assignments()).give(files);
      window.location.hash = '#/journal';
    },
    now: Date.now,
    newId,
  });
}
