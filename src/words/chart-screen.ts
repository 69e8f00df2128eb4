/** What the Chart place says. */
export const CHART_SCREEN = {
  chartText: 'Chart text',
  newChart: 'New chart',
  saveChart: 'Save as a file',
  saveMidi: 'MIDI file',
  yourCharts: 'Your charts',
  noCharts: 'Type over any chart, or begin a new one: it is kept here.',
  demoBook: 'Demo book',
  faults: (count: number): string => (count === 1 ? '1 fault' : `${count} faults`),
  noFaults: 'No faults. This is what plays.',
  lastGood: 'Until the faults are gone, the last good music goes on playing.',
  faultPlace: (line: number, column: number): string => `Line ${line}, column ${column}`,
  expected: (expected: string): string => `expected ${expected}`,
  oddSection: 'odd: the clave turns over',
  otherSide: (side: 2 | 3): string => `comes back on the ${side}-side`,
  asItSounds: 'As it sounds',
  onThisPlace: 'Further down',
  bar: (bar: number): string => `bar ${bar + 1}`,
  /** A section and how it stands to the clave. */
  section: (visit: { readonly bars: number; readonly side: 2 | 3 }): string =>
    `${visit.bars} ${visit.bars === 1 ? 'bar' : 'bars'}, from the ${visit.side}-side`,
  /** What the page says about keeping the player's work; `refused` is the device's reason, or null when nothing was refused. */
  keeping: (kind: 'kept' | 'waiting' | 'late' | 'refused' | 'cleared' | 'newer', refused: string | null): string => {
    if (kind === 'kept') return 'Kept on this device.';
    if (kind === 'waiting') return 'Keeping…';
    if (kind === 'newer') return 'Not kept: a newer version of this page has written here. Save the chart as a file to be safe.';
    if (kind === 'late') return 'Not kept yet: this device has not answered. Save the chart as a file to be safe.';
    if (kind === 'cleared')
      return 'Nothing more is kept in this tab: everything was deleted in another one. Save the chart as a file if you want it.';
    return `Not kept on this device: ${refused ?? 'no reason given'}. Everything stays here until you close the page; save the chart as a file to be safe.`;
  },
  moreBars: (count: number): string => `and ${count} more bars`,
} as const;
