import { type Direction, type Level, TEMPO_RANGE } from '../vocabulary';

const LEVELS: Readonly<Record<Level | 'by section', string>> = {
  'by section': 'by section',
  1: 'sparse',
  2: 'standard',
  3: 'moving line',
  4: 'pickups',
  5: 'chromatic',
  6: 'riffs and bloques',
};

const tempoUnit = (unit: 'half' | 'quarter'): string => (unit === 'half' ? 'half notes' : 'quarter notes');

/** What the first screen says: header, transport, quick line. Bars are given from 0 and shown from 1. */
export const SCREEN = {
  name: 'Contratiempo',
  skip: 'Skip to the music',
  places: { practise: 'Practise', chart: 'Chart', sheet: 'Sheet', drills: 'Drills', journal: 'Journal' },
  placesName: 'Places',
  theme: { device: 'As the device', paper: 'Paper', night: 'Night' },
  view: { grid: 'Grid', staff: 'Staff' },
  balance: 'Balance',
  fullScreen: 'Full screen',
  leaveFullScreen: 'Leave full screen',
  play: 'Play',
  stop: 'Stop',
  playAlong: 'Play along',
  transportName: 'Transport',
  slower: 'Slower',
  faster: 'Faster',
  goal: 'goal',
  tempoName: 'Tempo',
  /** A tempo in the unit the player reads: half notes as kept, quarter notes twice that. */
  tempo: (halfNotes: number, unit: 'half' | 'quarter'): number => Math.round((unit === 'half' ? halfNotes : halfNotes * 2) * 10) / 10,
  tempoUnit,
  tempoRange: (unit: 'half' | 'quarter'): string => {
    const factor = unit === 'half' ? 1 : 2;
    return `A tempo is a number from ${TEMPO_RANGE.from * factor} to ${TEMPO_RANGE.to * factor} ${tempoUnit(unit)} a minute.`;
  },
  exchange: (direction: Direction): string => `Direction ${direction}. Exchange the sides`,
  level: 'Level',
  levels: LEVELS,
  lessBusy: 'Less busy',
  busier: 'Busier',
  handsSound: 'Hands that sound',
  hand: (hand: 'left' | 'right', on: boolean): string => `${hand === 'left' ? 'Left' : 'Right'} ${on ? 'on' : 'off'}`,
  loop: 'Loop',
  loopOff: 'Loop off',
  /** Bars [from, to) as people write a run: `Loop 1–4`. */
  loopRun: (loop: { readonly fromBar: number; readonly toBar: number } | null): string =>
    loop ? `Loop ${loop.fromBar + 1}–${loop.toBar}` : 'Whole form',
  /** A bar's number as people count. */
  barNumber: (bar: number): string => String(bar + 1),
  barBefore: '1 bar before',
  barAfter: '1 bar after',
  another: 'Another one',
  anotherHint: 'the same level with another line',
  looks: 'View',
  more: 'More',
  less: 'Less',
  quickLabel: 'Four chords, or a loop and a key',
  quickExample: 'Gm7 C7 or ii-V-I in B♭',
  quickPlay: 'Play these',
  noMusic: 'There is no music yet: the chart has faults.',
  goToChart: 'Go to the chart',
  correct: (nearest: string): string => `Write ${nearest}`,
  loading: 'One moment…',
  failed: 'This part of the page could not be shown.',
  reload: 'Load the page again',
  shortcutsName: 'Keys',
  words: 'Words',
  wordsShort: 'A–Z',
} as const;
