import type { PartName } from '../performance/performance';
import { PARTS } from '../performance/performance';
import {
  type Clave,
  type Colour,
  type Device,
  type Direction,
  type HalfNotesPerMinute,
  type Hands,
  halfNotesPerMinute,
  type Level,
} from '../vocabulary';
import type { Mix } from './ports';

/** Levels that this part of the program offers. */
export const LEVELS = [1, 2, 3, 4] as const satisfies readonly Level[];
export const CLAVE_KINDS = ['son', 'rumba'] as const satisfies readonly Clave['kind'][];
export const HANDS = ['double', 'wide', 'tenths', 'tumbao', 'right', 'left'] as const satisfies readonly Hands[];
export const DEVICES = ['octave-up', 'octaves-only', 'one-bar-neutral'] as const satisfies readonly Device[];
export const COLOURS = ['plain', 'jazz'] as const satisfies readonly Colour[];

/** Sounding bars [from, to) that go round; always whole clave cycles. */
export interface Loop {
  readonly fromBar: number;
  readonly toBar: number;
}

/** Loudness of one part: linear gain 0 to 1, and its mute. */
export interface PartBalance {
  readonly level: number;
  readonly muted: boolean;
}
/** How loud each part is, and the whole. */
export type Balance = Readonly<Record<PartName, PartBalance>>;

/** What a player sets for one chart; remembered with the chart. Which hands sound is the mute of `piano right` and `piano left` in `balance`. */
export interface Settings {
  readonly tempo: HalfNotesPerMinute;
  readonly goalTempo: HalfNotesPerMinute;
  readonly direction: Direction;
  readonly kind: (typeof CLAVE_KINDS)[number];
  readonly level: (typeof LEVELS)[number];
  readonly devices: readonly Device[];
  readonly hands: (typeof HANDS)[number];
  readonly colour: Colour;
  /** Semitones above the chart's own key, 0 to 11. */
  readonly transpose: number;
  /** "Another one" adds one. */
  readonly seed: number;
  readonly loop: Loop | null;
  readonly countInBars: 0 | 1 | 2;
  /** How the whole form is played when no loop is set. */
  readonly round: 'round and round' | 'once, then end';
  readonly pulse: 'halves' | 'quarters';
  readonly view: 'grid' | 'staff';
  readonly balance: Balance;
}

/** What a player sets once, for every chart. */
export interface Preferences {
  readonly theme: 'device' | 'paper' | 'night';
  readonly tempoUnit: 'half' | 'quarter';
  readonly shortcuts: boolean;
  /** Paper of the lesson sheet. */
  readonly paper: 'A4' | 'Letter';
  /** Overall loudness, 0 to 1; it starts moderate. */
  readonly ceiling: number;
  /** Cents above A = 440, −50 to 50. */
  readonly tuningCents: number;
  readonly cautionSeen: boolean;
}

/** Moderate loudness: the piano in front, the pulse behind. */
export const DEFAULT_BALANCE: Balance = {
  'piano right': { level: 0.8, muted: false },
  'piano left': { level: 0.7, muted: false },
  bass: { level: 0.7, muted: false },
  clave: { level: 0.65, muted: false },
  pulse: { level: 0.35, muted: true },
  percussion: { level: 0.5, muted: false },
};

/** The settings of a chart that was never opened before, before the chart's own tempo and clave are taken over. */
export const DEFAULT_SETTINGS: Settings = {
  tempo: halfNotesPerMinute(80),
  goalTempo: halfNotesPerMinute(92),
  direction: '2-3',
  kind: 'son',
  level: 2,
  devices: [],
  hands: 'double',
  colour: 'plain',
  transpose: 0,
  seed: 0,
  loop: null,
  countInBars: 1,
  round: 'round and round',
  pulse: 'halves',
  view: 'grid',
  balance: DEFAULT_BALANCE,
};

/** Preferences of someone who has set nothing. */
export const DEFAULT_PREFERENCES: Preferences = {
  theme: 'device',
  tempoUnit: 'half',
  shortcuts: true,
  paper: 'A4',
  ceiling: 0.7,
  tuningCents: 0,
  cautionSeen: false,
};

/** The mix that the player port takes: the chart's balance under the page's ceiling and tuning. */
export function mixOf(settings: Settings, preferences: Preferences): Mix {
  return { parts: settings.balance, ceiling: preferences.ceiling, tuningCents: preferences.tuningCents };
}

/** Four balances with one touch. Levels stay as the player set them; only the mutes change. */
export const PLAIN_MIXES = ['everything', 'clave and piano', 'without piano', 'clave only'] as const;
export type PlainMix = (typeof PLAIN_MIXES)[number];

const HEARD_IN: Readonly<Record<PlainMix, readonly PartName[]>> = {
  everything: ['piano right', 'piano left', 'bass', 'clave', 'percussion'],
  'clave and piano': ['piano right', 'piano left', 'clave'],
  'without piano': ['bass', 'clave', 'percussion'],
  'clave only': ['clave'],
};

/** `balance` with the mutes of a plain mix; the pulse keeps its own switch. */
export function plainMix(balance: Balance, mix: PlainMix): Balance {
  const heard = HEARD_IN[mix];
  const entries = PARTS.map(
    (part) => [part, part === 'pulse' ? balance.pulse : { ...balance[part], muted: !heard.includes(part) }] as const,
  );
  return Object.fromEntries(entries) as Record<PartName, PartBalance>;
}

/** `balance` with both hands of the piano sounding. */
export function bothHands(balance: Balance): Balance {
  const sounding = (part: PartName): PartBalance => ({ ...balance[part], muted: false });
  return { ...balance, 'piano right': sounding('piano right'), 'piano left': sounding('piano left') };
}
