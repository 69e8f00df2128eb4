import { browserArchiveParts, createArchive } from '../device/archive';
import { createJournalStore } from '../device/journal-store';

/** Everything that is kept on this device, as a whole. */
export const ARCHIVE = createArchive(browserArchiveParts());
/** The journal on this device. */
export const JOURNAL = createJournalStore();
