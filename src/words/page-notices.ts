/** What the page says once, in its own time: another tab, another version, records put aside, what the device or the disk refused. */
export const PAGE_NOTICES = {
  otherTabFresh: 'This chart was changed in another tab.',
  otherTabParted: 'This chart was changed in another tab too. Yours goes on here as a chart of its own; nothing is lost.',
  cleared:
    'Everything kept on this device was deleted in another tab. What lies here is still here, but nothing more is kept until the page is loaded anew.',
  late: 'This device has not answered yet: what you see may not be what was saved last. What you do here stays, and is written as soon as it answers.',
  newer:
    'A newer version of this page has written on this device. This one leaves that as it is and keeps nothing. Load the page anew to get the newer one; if this comes again, save a backup of what you made here.',
  saveBackup: 'Save a backup',
  loadAnew: 'Load the page anew',
  showOther: 'Show the other one',
  keepThis: 'Keep this one as well',
  understood: 'All right',
  putAside: (count: number): string =>
    count === 1
      ? 'One saved record could not be read. It was put aside untouched, and everything else is here.'
      : `${count} saved records could not be read. They were put aside untouched, and everything else is here.`,
  trouble: (reason: string): string =>
    `This could not be made into music (${reason}). The last good music is kept; please change the last setting back.`,
  unwritten: (reason: string): string =>
    `What you played could not be written into the journal: ${reason}. It stays here until the page is closed, and is tried again after the next pass.`,
  saveJournal: 'Save the journal as a file',
  unsaved: (reason: string): string => `The file was not made (${reason}). Everything else is here; please try again.`,
} as const;
