import type { Colour, Device, Direction, Hands, Level } from '../vocabulary';
import { SCREEN } from './screen';

const HANDS: Readonly<Record<Hands, string>> = {
  double: 'both hands, an octave apart',
  wide: 'both hands, two octaves apart',
  tenths: 'tenths',
  contrary: 'contrary motion',
  tumbao: 'left hand plays the bass',
  right: 'right hand alone',
  left: 'left hand alone',
};

const DEVICES: Readonly<Record<Device, string>> = {
  'octave-up': 'hand an octave up',
  'octaves-only': 'octaves only',
  'one-bar-neutral': 'one-bar neutral',
  'extra-note': 'extra note',
  'double-notes': 'double notes',
  'half-step-out': 'half step out and back',
};

const COLOURS: Readonly<Record<Colour, string>> = { plain: 'plain', jazz: 'jazz' };

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

function changeWords(facts: ChangeFacts): string {
  switch (facts.thing) {
    case 'direction':
      return facts.direction;
    case 'kind':
      return `${facts.kind} clave`;
    case 'level':
      return facts.level === 'by section' ? 'Levels by section' : `Level ${facts.level}, ${SCREEN.levels[facts.level]},`;
    case 'hands':
      return `${upperFirst(HANDS[facts.hands])},`;
    case 'devices':
      return facts.devices.length === 0 ? 'No device' : `${upperFirst(facts.devices.map((device) => DEVICES[device]).join(', '))},`;
    case 'colour':
      return `${upperFirst(COLOURS[facts.colour])} colour`;
    case 'transpose':
      return `${facts.key}`;
    case 'seed':
      return 'Another figure';
    case 'loop':
      return facts.loop ? `${SCREEN.loopRun(facts.loop)},` : 'The whole form';
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

/** Names of what can be set, and the sentences about changes made while playing. */
export const CHANGES = {
  hands: HANDS,
  devices: DEVICES,
  /** What a device is for, in a few words. */
  deviceHints: {
    'octave-up': 'cuts through the band',
    'octaves-only': 'the line without inner notes',
    'one-bar-neutral': 'safe until the bell is heard',
    'extra-note': 'fills beat 3 of the 3-side',
    'double-notes': 'two sixteenths, once in two cycles',
    'half-step-out': 'one cycle in four goes outside',
  } satisfies Readonly<Record<Device, string>>,
  colours: COLOURS,
  /** What will change and where it is heard: `3-2 from bar 5`. `fromBar` null means at once. */
  sentence: (facts: ChangeFacts, fromBar: number | null): string =>
    `${changeWords(facts)} ${fromBar === null ? 'now' : `from bar ${fromBar + 1}`}`,
} as const;
