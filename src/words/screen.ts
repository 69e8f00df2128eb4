import { type Colour, type Device, type Direction, type Hands, type Level, TEMPO_RANGE } from '../vocabulary';
import { printedNote } from './spoken';

/** Every sentence and label of the app frame, the transport, the balance and the chart page. Bars are given from 0 and shown from 1. */

/** A bar's number as people count. */
export const barNumber = (bar: number): string => String(bar + 1);

/** The levels' own words. */
export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  1: 'sparse',
  2: 'standard',
  3: 'moving line',
  4: 'pickups',
  5: 'chromatic',
  6: 'riffs and bloques',
};

export const HANDS_WORDS: Readonly<Record<Hands, string>> = {
  double: 'both hands, an octave apart',
  wide: 'both hands, two octaves apart',
  tenths: 'tenths',
  contrary: 'contrary motion',
  tumbao: 'left hand plays the bass',
  right: 'right hand alone',
  left: 'left hand alone',
};

export const DEVICE_WORDS: Readonly<Record<Device, string>> = {
  'octave-up': 'hand an octave up',
  'octaves-only': 'octaves only',
  'one-bar-neutral': 'one-bar neutral',
};

/** What a device is for, in a few words. */
export const DEVICE_HINTS: Readonly<Record<Device, string>> = {
  'octave-up': 'cuts through the band',
  'octaves-only': 'the line without inner notes',
  'one-bar-neutral': 'safe until the bell is heard',
};

export const COLOUR_WORDS: Readonly<Record<Colour, string>> = { plain: 'plain', jazz: 'jazz' };

/** A key as it is printed: `Bb` gives `B♭`, `F#m` gives `F♯m`. */
export const keyWords = (key: { readonly tonic: string; readonly mode: 'major' | 'minor' }): string =>
  printedNote(key.tonic) + (key.mode === 'minor' ? 'm' : '');

/** A tempo in the unit the player reads: half notes as kept, quarter notes twice that. */
export const tempoNumber = (halfNotes: number, unit: 'half' | 'quarter'): number =>
  Math.round((unit === 'half' ? halfNotes : halfNotes * 2) * 10) / 10;
/** What a tempo may be, as one sentence. */
export const tempoRangeWords = (unit: 'half' | 'quarter'): string => {
  const factor = unit === 'half' ? 1 : 2;
  return `A tempo is a number from ${TEMPO_RANGE.from * factor} to ${TEMPO_RANGE.to * factor} ${tempoUnitWords(unit)} a minute.`;
};
export const tempoUnitWords = (unit: 'half' | 'quarter'): string => (unit === 'half' ? 'half notes' : 'quarter notes');

/** Bars [from, to) as people write a run: `Loop 1–4`. */
export const loopWords = (loop: { readonly fromBar: number; readonly toBar: number } | null): string =>
  loop ? `Loop ${loop.fromBar + 1}–${loop.toBar}` : 'Whole form';

/** What a change made while playing was about, ready for "… from bar 5". */
export interface ChangeFacts {
  readonly thing: string;
  readonly direction: Direction;
  readonly kind: string;
  readonly level: Level;
  readonly hands: Hands;
  readonly colour: Colour;
  readonly devices: readonly Device[];
  readonly key: string;
  readonly loop: { readonly fromBar: number; readonly toBar: number } | null;
  readonly round: string;
  readonly pulse: 'halves' | 'quarters';
}

/** What will change and where it is heard: `3-2 from bar 5`. `fromBar` null means at once. */
export function changeSentence(facts: ChangeFacts, fromBar: number | null): string {
  return `${changeWords(facts)} ${fromBar === null ? 'now' : `from bar ${fromBar + 1}`}`;
}

function changeWords(facts: ChangeFacts): string {
  switch (facts.thing) {
    case 'direction':
      return facts.direction;
    case 'kind':
      return `${facts.kind} clave`;
    case 'level':
      return `Level ${facts.level}, ${LEVEL_WORDS[facts.level]},`;
    case 'hands':
      return `${upperFirst(HANDS_WORDS[facts.hands])},`;
    case 'devices':
      return facts.devices.length === 0 ? 'No device' : `${upperFirst(facts.devices.map((device) => DEVICE_WORDS[device]).join(', '))},`;
    case 'colour':
      return `${upperFirst(COLOUR_WORDS[facts.colour])} colour`;
    case 'transpose':
      return `${facts.key}`;
    case 'seed':
      return 'Another figure';
    case 'loop':
      return facts.loop ? `${loopWords(facts.loop)},` : 'The whole form';
    case 'round':
      return facts.round === 'round and round' ? 'Round and round' : 'Once, then an ending,';
    case 'pulse':
      return facts.pulse === 'halves' ? 'Pulse on 1 and 3' : 'Pulse on all four';
    default:
      return 'The changed chart';
  }
}

const upperFirst = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** A section and how it stands to the clave, for the chart page. */
export const sectionWords = (visit: { readonly bars: number; readonly side: 2 | 3 }): string =>
  `${visit.bars} ${visit.bars === 1 ? 'bar' : 'bars'}, from the ${visit.side}-side`;

/** What the page says about keeping the player's work; `refused` is the device's reason, or null when nothing was refused. */
export function keepingWords(kind: 'kept' | 'waiting' | 'refused', refused: string | null): string {
  if (kind === 'kept') return 'Kept on this device.';
  if (kind === 'waiting') return 'Keeping…';
  return `Not kept on this device: ${refused ?? 'no reason given'}. Everything stays here until you close the page; save the chart as a file to be safe.`;
}

/** What the page says when sound cannot start. */
export const blockedWords = (reason: string): string =>
  `The sound could not start: ${reason}. Press Play again, or look whether this page may play sound.`;

export const SCREEN = {
  name: 'Contratiempo',
  skip: 'Skip to the music',
  places: { practise: 'Practise', chart: 'Chart', sheet: 'Sheet' },
  placesName: 'Places',
  theme: { device: 'As the device', paper: 'Paper', night: 'Night' },
  themeName: 'Theme',
  view: { grid: 'Grid', staff: 'Staff' },
  viewName: 'View',
  balance: 'Balance',
  shortcuts: 'Keys',
  close: 'Close',
  play: 'Play',
  stop: 'Stop',
  transportName: 'Transport',
  slower: 'Slower',
  faster: 'Faster',
  tap: 'Tap',
  tapHint: 'Tap the tempo',
  goal: 'goal',
  goalName: 'Goal tempo',
  toGoal: 'Go to the goal',
  lowerGoal: 'Lower goal',
  higherGoal: 'Higher goal',
  tempoName: 'Tempo',
  unitName: 'Counted in',
  exchange: (direction: Direction): string => `Direction ${direction}. Exchange the sides`,
  level: 'Level',
  lessBusy: 'Less busy',
  busier: 'Busier',
  handsSound: 'Hands that sound',
  hand: (hand: 'left' | 'right', on: boolean): string => `${hand === 'left' ? 'Left' : 'Right'} ${on ? 'on' : 'off'}`,
  loop: 'Loop',
  loopOff: 'Loop off',
  loopHere: 'Loop this cycle',
  barBefore: '1 bar before',
  barAfter: '1 bar after',
  loopStart: 'Loop begins',
  loopEnd: 'Loop ends',
  earlier: 'earlier',
  later: 'later',
  more: 'More',
  less: 'Less',
  moreName: 'More settings',
  clave: 'Clave',
  direction: 'Direction',
  kindName: 'Kind',
  kinds: { son: 'son', rumba: 'rumba' },
  figure: 'Figure',
  hands: 'Hands',
  devices: 'Devices',
  colour: 'Colour',
  another: 'Another one',
  anotherHint: 'the same level with another line',
  key: 'Key',
  keyHint: 'from the chart’s own key upward',
  countIn: 'Count-in',
  countInBars: { 0: 'none', 1: '1 bar', 2: '2 bars' },
  round: 'Form',
  rounds: { 'round and round': 'round and round', 'once, then end': 'once, with an ending' },
  pulse: 'Pulse lane',
  pulses: { halves: '1 and 3', quarters: 'all four' },
  mixes: { everything: 'everything', 'clave and piano': 'clave and piano', 'without piano': 'without piano', 'clave only': 'clave only' },
  mixesName: 'One touch',
  parts: {
    'piano right': 'piano, right hand',
    'piano left': 'piano, left hand',
    bass: 'bass',
    clave: 'clave',
    pulse: 'pulse',
    percussion: 'percussion',
  },
  heard: 'sounds',
  silent: 'silent',
  ceiling: 'Overall loudness',
  tuning: 'Tuning',
  tuningValue: (cents: number): string =>
    cents === 0 ? 'A = 440 Hz' : `${cents > 0 ? '+' : '−'}${Math.abs(cents)} cents, A = ${(440 * 2 ** (cents / 1200)).toFixed(1)} Hz`,
  tuningHint: 'for an acoustic piano that stands higher or lower',
  hearing: 'Begin softly: an hour of practice adds up in the ears too.',
  caution: 'Montuno playing is heavy work. Stop when it hurts, shake out, rest; if it keeps hurting, see a teacher or a clinician.',
  cautionSeen: 'Understood',
  quickLabel: 'Four chords, or a loop and a key',
  quickExample: 'Gm7 C7 Fmaj7 D7 · ii-V-I in B♭',
  quickPlay: 'Play these',
  noMusic: 'There is no music yet: the chart has faults.',
  goToChart: 'Go to the chart',
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
  correct: (nearest: string): string => `Write ${nearest}`,
  expected: (expected: string): string => `expected ${expected}`,
  oddSection: 'odd: the clave turns over',
  otherSide: (side: 2 | 3): string => `comes back on the ${side}-side: recount, or is a bar missing?`,
  asItSounds: 'As it sounds',
  bar: (bar: number): string => `bar ${bar + 1}`,
  moreBars: (count: number): string => `and ${count} more bars`,
  otherTabFresh: 'This chart was changed in another tab.',
  otherTabParted: 'This chart was changed in another tab too. Yours goes on here as a chart of its own; nothing is lost.',
  showOther: 'Show the other one',
  keepThis: 'Keep this one as well',
  understood: 'All right',
  putAside: (count: number): string =>
    count === 1
      ? 'One saved record could not be read. It was put aside untouched, and everything else is here.'
      : `${count} saved records could not be read. They were put aside untouched, and everything else is here.`,
  trouble: (reason: string): string =>
    `This could not be made into music (${reason}). The last good music is kept; please change the last setting back.`,
  loading: 'One moment…',
  failed: 'This part of the page could not be shown.',
  reload: 'Load the page again',
  shortcutsOn: 'Single keys work as shortcuts',
  shortcutsName: 'Keys',
} as const;

/** The list behind `?`: what each key does. */
export const SHORTCUT_WORDS: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: 'Space', does: 'play or stop' },
  { keys: '−  +', does: 'slower, faster' },
  { keys: 'T', does: 'tap the tempo' },
  { keys: 'D', does: 'exchange the sides of the clave' },
  { keys: '1 – 4', does: 'level' },
  { keys: 'A', does: 'another one' },
  { keys: 'F  J', does: 'left hand, right hand on or off' },
  { keys: 'L', does: 'loop this cycle, or loop off' },
  { keys: '[  ]', does: 'one bar before, one bar after' },
  { keys: 'Page Up  Page Down', does: 'the cycle or loop before, after (page-turn pedals too)' },
  { keys: '?', does: 'this list' },
  { keys: 'Esc', does: 'close what is open' },
];
