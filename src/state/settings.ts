import type { FigureEdit } from '../music/montuno/edits';
import type { SoloKind } from '../music/montuno/solo';
import type { PercussionChoice } from '../music/percussion/percussion';
import type { ArrangeOptions } from '../music/score';
import type { Feel } from '../performance/feel';
import type { PartName } from '../performance/performance';
import { PARTS } from '../performance/performance';
import { FIRST_LEVELS } from '../performance/sounds/first-levels';
import {
  type Clave,
  type Colour,
  type Compass,
  type Device,
  type Direction,
  type HalfNotesPerMinute,
  type Hands,
  halfNotesPerMinute,
  type Level,
  type Stretch,
} from '../vocabulary';
import type { Language } from '../words/language';
import type { NoteNaming } from '../words/spoken';
import type { Mix } from './ports';

/** Levels, and the section's own: what the roles of the sections choose. */
export const LEVELS = ['by section', 1, 2, 3, 4, 5, 6] as const satisfies readonly (Level | 'by section')[];
/** Claves on offer in 4/4. */
export const CLAVE_KINDS = ['son', 'rumba'] as const satisfies readonly Clave['kind'][];
/** What the hands may do. */
export const HANDS = ['double', 'wide', 'tenths', 'contrary', 'tumbao', 'right', 'left'] as const satisfies readonly Hands[];
/** Devices on offer. */
export const DEVICES = [
  'octave-up',
  'octaves-only',
  'one-bar-neutral',
  'extra-note',
  'double-notes',
  'half-step-out',
] as const satisfies readonly Device[];
/** Stretches of a hand, narrow to wide. */
export const STRETCHES = ['less than an octave', 'octave', 'ninth', 'tenth'] as const satisfies readonly Stretch[];
/** Instruments by their keys. */
export const COMPASSES = [49, 61, 76, 88] as const satisfies readonly Compass[];
/** Solos on offer. */
export const SOLOS = ['example', 'scaffold'] as const satisfies readonly SoloKind[];
/** Feels on offer. */
export const FEELS = ['straight', 'measured'] as const satisfies readonly Feel['name'][];
/** Colours on offer. */
export const COLOURS = ['plain', 'jazz'] as const satisfies readonly Colour[];

/** A level fixed for the whole form, or what the sections' roles choose. */
export type LevelChoice = (typeof LEVELS)[number];
/** A pair of cells chosen by hand. */
export type CellPair = NonNullable<ArrangeOptions['cells']>;
/** A rhythm of the player's own, and the direction it is written in. */
export type OwnFigure = NonNullable<ArrangeOptions['ownFigure']>;

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
  readonly level: LevelChoice;
  /** Name of a style in place of the chart's; null plays what is charted, section by section. */
  readonly style: string | null;
  readonly devices: readonly Device[];
  readonly hands: (typeof HANDS)[number];
  readonly colour: Colour;
  readonly stretch: Stretch;
  readonly compass: Compass;
  /** Cells chosen by hand; kept, but not played, while the clave sounds that they do not go with. */
  readonly cells: CellPair | null;
  readonly ownFigure: OwnFigure | null;
  /** The exercise that puts every cell on the wrong side. */
  readonly crossed: boolean;
  readonly percussion: PercussionChoice;
  /** Changes to single strokes, oldest first; they outlive a change of level. */
  readonly edits: readonly FigureEdit[];
  /** Changes taken back, the next to do again last. */
  readonly undoneEdits: readonly FigureEdit[];
  readonly solo: SoloKind | null;
  readonly feel: (typeof FEELS)[number];
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
  /** The language of the page; null follows the browser. */
  readonly language: Language | null;
  /** How notes are named; chord symbols keep their letters. */
  readonly noteNames: NoteNaming;
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

/** Moderate loudness: the piano in front, the pulse behind and silent until asked for. */
export const DEFAULT_BALANCE = Object.fromEntries(
  PARTS.map((part) => [part, { level: FIRST_LEVELS[part], muted: part === 'pulse' }]),
) as unknown as Balance;

/** The settings of a chart that was never opened before, before the chart's own tempo and clave are taken over. */
export const DEFAULT_SETTINGS: Settings = {
  tempo: halfNotesPerMinute(80),
  goalTempo: halfNotesPerMinute(92),
  direction: '2-3',
  kind: 'son',
  level: 2,
  style: null,
  devices: [],
  hands: 'double',
  colour: 'plain',
  stretch: 'octave',
  compass: 88,
  cells: null,
  ownFigure: null,
  crossed: false,
  percussion: 'by style',
  edits: [],
  undoneEdits: [],
  solo: null,
  feel: 'straight',
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
  language: null,
  noteNames: 'letters',
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
