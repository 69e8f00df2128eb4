import { type Colour, type Device, type Direction, type Hands, type Level, TEMPO_RANGE } from '../vocabulary';
import { printedNote } from './spoken';

/** Every sentence and label of the app frame, the transport, the balance and the chart page. Bars are given from 0 and shown from 1. */

/** A bar's number as people count. */
export const barNumber = (bar: number): string => String(bar + 1);

/** The levels' own words. */
export const LEVEL_WORDS: Readonly<Record<Level | 'by section', string>> = {
  'by section': 'by section',
  1: 'sparse',
  2: 'standard',
  3: 'moving line',
  4: 'pickups',
  5: 'chromatic',
  6: 'riffs and bloques',
};

/** What the hands do, in words. */
export const HANDS_WORDS: Readonly<Record<Hands, string>> = {
  double: 'both hands, an octave apart',
  wide: 'both hands, two octaves apart',
  tenths: 'tenths',
  contrary: 'contrary motion',
  tumbao: 'left hand plays the bass',
  right: 'right hand alone',
  left: 'left hand alone',
};

/** Devices by name. */
export const DEVICE_WORDS: Readonly<Record<Device, string>> = {
  'octave-up': 'hand an octave up',
  'octaves-only': 'octaves only',
  'one-bar-neutral': 'one-bar neutral',
  'extra-note': 'extra note',
  'double-notes': 'double notes',
  'half-step-out': 'half step out and back',
};

/** What a device is for, in a few words. */
export const DEVICE_HINTS: Readonly<Record<Device, string>> = {
  'octave-up': 'cuts through the band',
  'octaves-only': 'the line without inner notes',
  'one-bar-neutral': 'safe until the bell is heard',
  'extra-note': 'fills beat 3 of the 3-side',
  'double-notes': 'two sixteenths, once in two cycles',
  'half-step-out': 'one cycle in four goes outside',
};

/** Colours by name. */
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
/** The unit of a tempo in words. */
export const tempoUnitWords = (unit: 'half' | 'quarter'): string => (unit === 'half' ? 'half notes' : 'quarter notes');

/** Bars [from, to) as people write a run: `Loop 1–4`. */
export const loopWords = (loop: { readonly fromBar: number; readonly toBar: number } | null): string =>
  loop ? `Loop ${loop.fromBar + 1}–${loop.toBar}` : 'Whole form';

/** What a change made while playing was about, ready for "… from bar 5". */
export interface ChangeFacts {
  readonly thing: string;
  readonly direction: Direction;
  readonly kind: string;
  readonly level: Level | 'by section';
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
      return facts.level === 'by section' ? 'Levels by section' : `Level ${facts.level}, ${LEVEL_WORDS[facts.level]},`;
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
    case 'style':
      return 'The style';
    case 'edits':
      return 'Your change';
    case 'solo':
      return 'The solo part';
    case 'crossed':
      return 'The exercise';
    case 'feel':
      return 'The feel';
    case 'percussion':
      return 'The percussion';
    case 'cells':
    case 'ownFigure':
    case 'stretch':
    case 'compass':
      return 'The figure';
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
  `The sound could not start: ${reason}. Touch the page or press a key to go on, or look whether this page may play sound.`;

/** What the first screen says. */
export const SCREEN = {
  name: 'Contratiempo',
  skip: 'Skip to the music',
  places: { practise: 'Practise', chart: 'Chart', sheet: 'Sheet' },
  placesName: 'Places',
  theme: { device: 'As the device', paper: 'Paper', night: 'Night' },
  view: { grid: 'Grid', staff: 'Staff' },
  balance: 'Balance',
  play: 'Play',
  stop: 'Stop',
  transportName: 'Transport',
  slower: 'Slower',
  faster: 'Faster',
  goal: 'goal',
  tempoName: 'Tempo',
  exchange: (direction: Direction): string => `Direction ${direction}. Exchange the sides`,
  level: 'Level',
  lessBusy: 'Less busy',
  busier: 'Busier',
  handsSound: 'Hands that sound',
  hand: (hand: 'left' | 'right', on: boolean): string => `${hand === 'left' ? 'Left' : 'Right'} ${on ? 'on' : 'off'}`,
  loop: 'Loop',
  loopOff: 'Loop off',
  barBefore: '1 bar before',
  barAfter: '1 bar after',
  more: 'More',
  less: 'Less',
  caution: 'Montuno playing is heavy work. Stop when it hurts, shake out, rest; if it keeps hurting, see a teacher or a clinician.',
  cautionSeen: 'Understood',
  quickLabel: 'Four chords, or a loop and a key',
  quickExample: 'Gm7 C7 Fmaj7 D7 · ii-V-I in B♭',
  quickPlay: 'Play these',
  noMusic: 'There is no music yet: the chart has faults.',
  goToChart: 'Go to the chart',
  correct: (nearest: string): string => `Write ${nearest}`,
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
  shortcutsName: 'Keys',
} as const;
