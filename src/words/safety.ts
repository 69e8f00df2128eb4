const room = (bytes: number): string =>
  bytes < 1_073_741_824 ? `${(bytes / 1_048_576).toFixed(1)} MB` : `${(bytes / 1_073_741_824).toFixed(1)} GB`;
const charts = (count: number): string => (count === 1 ? '1 chart' : `${count} charts`);
const sets = (count: number): string => (count === 1 ? '1 set list' : `${count} set lists`);
const entries = (count: number): string => (count === 1 ? '1 journal entry' : `${count} journal entries`);

const EXPECTED = {
  'no json': 'expected a backup file of this page; this is no JSON text, or it ends too early',
  'no backup': 'expected a backup file of this page; this is another kind of JSON',
  'newer version': 'expected version 1; this file was written by a later version of the page: load the page again to get it',
  'no list': 'expected a list',
  'bad chart': 'expected a chart with id, title, time and text',
  'bad set': 'expected a set list with id, name, day and charts',
  'bad entry': 'expected a journal entry with id, time and text',
  'bad record': 'expected a saved record of settings',
  'id twice': 'expected each id once',
} as const;

/** What the page says about keeping the player's work safe. */
export const SAFETY_WORDS = {
  name: 'Safe keeping',
  where: 'Everything lies on this device alone. A backup is one file with all charts, set lists, settings and the journal.',
  lasting: (lasting: boolean | null): string => {
    if (lasting === null) return 'This browser does not say how long it keeps things: save a backup now and then.';
    return lasting
      ? 'This browser keeps it until you delete it.'
      : 'This browser may clear it away when room is short, or after a week without a visit.';
  },
  askToLast: 'Ask it to keep everything',
  room: (usage: number, quota: number): string => `${room(usage)} in use, room for ${room(quota)}.`,
  lastBackup: (day: string): string => `Last backup from this device: ${day}.`,
  noBackup: 'No backup was saved from this device yet.',
  saveBackup: 'Save a backup',
  fileName: (day: string): string => `contratiempo-backup-${day}.json`,
  restoreHint: 'To bring one back, use “Bring files in” or drop it on this page.',

  waiting: (name: string, day: string): string => `${name}, made ${day}. Nothing has been changed yet. It would bring:`,
  newCharts: (count: number): string => `${charts(count)} that ${count === 1 ? 'is' : 'are'} not here`,
  sameCharts: (count: number): string => `${charts(count)} that ${count === 1 ? 'is' : 'are'} here already, word for word`,
  differentCharts: (count: number): string => `${charts(count)} with another text than here`,
  difference: (title: string, here: string, file: string): string => `${title}: here changed ${here}, in the file ${file}`,
  newSets: (count: number): string => sets(count),
  newEntries: (count: number): string => entries(count),
  nothingNew: 'nothing that is not here already',
  onDifference: 'Where the texts differ',
  choices: { 'keep both': 'Keep both', 'take the file': 'Take the one in the file', 'keep mine': 'Keep mine' },
  withSettings: (count: number): string => `Also take its preferences and settings over (${count})`,
  restore: 'Bring it in',
  leave: 'Leave everything as it is',
  leftOut: (count: number): string =>
    count === 1 ? 'One item of the file cannot be read and is left out:' : `${count} items of the file cannot be read and are left out:`,
  fault: (fault: { readonly code: keyof typeof EXPECTED; readonly path: string; readonly found: string }): string =>
    `${fault.path === '' ? '' : `${fault.path}: `}${EXPECTED[fault.code]}${fault.found === '' ? '' : `; found ${fault.found}`}.`,
  merged: 'The backup was brought in.',
  undoMerge: 'Put everything back as it was',
  refused: (reason: string): string => `That did not work: ${reason}. Nothing you wrote is lost; try again, or save a backup first.`,

  deleteAll: 'Delete everything…',
  deleteWhat: (counts: { readonly charts: number; readonly sets: number; readonly entries: number }): string =>
    `This deletes ${charts(counts.charts)}, ${sets(counts.sets)}, ${entries(counts.entries)} and all settings from this device. It cannot be taken back without a backup.`,
  deleteNow: 'Delete everything now',
  keepAll: 'Keep everything',

  report: 'Copy a report',
  reportHint: 'For when something goes wrong: facts about browser and page, nothing you wrote.',
  copied: 'The report was copied.',
  notCopied: 'The clipboard was refused; here is the report to copy by hand.',

  offline: 'Without a connection',
  offlineState: {
    off: 'Switched off: the page needs a connection.',
    unsupported: 'This browser cannot keep the page for use without a connection.',
    preparing: 'Being made ready…',
    ready: 'Ready: page, sounds and type are on this device.',
    update: 'Ready, and a new version waits.',
    failed: 'Could not be made ready this time; it is tried again on the next visit.',
  },
  offlineOn: 'Make it work without a connection',
  offlineOff: 'Switch it off and clear the copy',
} as const;
