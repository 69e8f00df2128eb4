import type { StoreApi } from 'zustand/vanilla';
import { CLICK_MODES, type Ensemble, FULL_BAND } from '../../performance/ensemble';
import type { PartName, Performance } from '../../performance/performance';
import type { Assessment, LoopBars } from '../../practice/finding';
import type { Matched } from '../../practice/labelled';
import type { MarkerDelay } from '../../practice/marker-delay';
import type { Take } from '../../practice/take';
import type { HalfNotesPerMinute, InputMillis } from '../../vocabulary';
import type { Loop } from '../settings';
import type { Calibration } from './calibrations';
import type { OutputTrust } from './output-trust';
import type { PlayedFigure } from './played-figure';
import type { InputDevice, Played, SourceName, SourceState } from './ports';
import type { ReplayWith } from './replay';
import type { Interruption } from './takes';

/** What the player plays along with. */
export const PLAYED_PARTS = ['both hands', 'right hand', 'left hand', 'clave'] as const;
export type PlayedPart = (typeof PLAYED_PARTS)[number];

/** The parts of the performance that a choice of hands stands for. */
export const PARTS_OF: Readonly<Record<PlayedPart, readonly PartName[]>> = {
  'both hands': ['piano right', 'piano left'],
  'right hand': ['piano right'],
  'left hand': ['piano left'],
  clave: ['clave'],
};

/** What the band's piano does while the player plays: it sounds, it drops out for four bars in eight, or it is left to the player. */
export const PIANOS = ['with me', 'drops out', 'mine'] as const;
/** What the click marks. */
export const CLICKS = CLICK_MODES;
/** What supports the player. */
export interface Band {
  readonly piano: (typeof PIANOS)[number];
  readonly claveFades: boolean;
  readonly click: Ensemble['click'];
  /** Bars with and without the band, in turn; null when it never stops. */
  readonly gap?: { readonly on: number; readonly off: number } | null;
}
/** Everybody plays. */
export const WHOLE_BAND: Band = { piano: 'with me', claveFades: false, click: 'as set', gap: null };
const DROPPING = { on: 4, off: 4 };

/** What the player's machine leaves out for a band. */
export const ensembleOf = ({ piano, claveFades, click, gap = null }: Band): Ensemble => ({
  ...FULL_BAND,
  claveFades,
  click,
  gap,
  pianoDrops: piano === 'drops out' ? DROPPING : piano === 'mine' ? { on: 0, off: 1 } : null,
});

/** How a player rates a pass that nothing listened to. */
export type SelfRating = 'clean' | 'nearly' | 'not yet';

/** A stretch of playing, judged. */
export interface PassReport {
  readonly id: number;
  readonly take: Take;
  readonly matched: Matched;
  readonly assessment: Assessment;
  /** Passes of the music completed before it, from 0; and whether it was a whole one. */
  readonly pass: number;
  readonly wholePass: boolean;
  /** Passes that the findings look at, this one among them. */
  readonly together: number;
  /** What the take itself said about the delay from loudspeaker to microphone; null where no microphone listened to a loudspeaker. */
  readonly loudspeaker: MarkerDelay | null;
  /** Why it does not count, or null. */
  readonly interrupted: Interruption | null;
}

/** Passes of one loop. */
export interface Tally {
  readonly fromTick: number;
  readonly toTick: number;
  readonly passes: number;
  readonly clean: number;
  readonly cleanInARow: number;
}

/** Where calibration stands: off, clicking, or with a result that was not good enough. */
export type CalibrationRun =
  | { readonly kind: 'off' }
  | { readonly kind: 'clicking' }
  | { readonly kind: 'failed'; readonly why: 'too few' | 'too uneven' | 'off the clicks' };

/** The last take, sounding instead of the band as it was played or on the other side of the clave, and the clave strokes it meets. */
export interface Replaying {
  readonly side: 'as played' | 'other';
  /** Score ticks of clave strokes that meet a stroke of the player's. */
  readonly met: readonly number[];
  readonly claveStrokes: number;
}

/** What the Play-along panel shows. Changes when something happens, never from frame to frame. */
export interface ListeningState {
  readonly source: SourceName | null;
  readonly device: SourceState;
  /** Computer keys tap a rhythm instead of playing notes. */
  readonly rhythmKeys: boolean;
  readonly octave: number;
  /** The band is heard in headphones, not by the microphone. */
  readonly headphones: boolean;
  readonly plays: PlayedPart;
  readonly band: Band;
  /** The page's piano sounds what is played: for keyboards without a sound of their own. */
  readonly soundsNotes: boolean;
  /** Where the arrangement is sent, or null. */
  readonly sendTo: string | null;
  readonly outputs: readonly InputDevice[];
  readonly output: OutputTrust;
  /** Times of the device were missing, repeated or rounded in the last stretch. */
  readonly coarse: boolean;
  readonly calibration: Calibration | null;
  readonly calibrating: CalibrationRun;
  readonly report: PassReport | null;
  readonly tally: Tally | null;
  /** Stretches in a row in which nothing was heard. */
  readonly silent: number;
  readonly replaying: Replaying | null;
  /** Ratings by the player's own ear for the loop in force. */
  readonly ratings: readonly SelfRating[];
}

/** Nobody listens. */
export const NOT_LISTENING: ListeningState = {
  source: null,
  device: { kind: 'off' },
  rhythmKeys: false,
  octave: 0,
  headphones: false,
  plays: 'both hands',
  band: WHOLE_BAND,
  soundsNotes: false,
  sendTo: null,
  outputs: [],
  output: 'steady',
  coarse: false,
  calibration: null,
  calibrating: { kind: 'off' },
  report: null,
  tally: null,
  silent: 0,
  replaying: null,
  ratings: [],
};

/** Listening as the screens see it. */
export interface Listening {
  readonly store: StoreApi<ListeningState>;
  /** Asks for a source and listens to it; call it inside a gesture. */
  choose(source: SourceName): void;
  /** Wakes a device that is held; the take goes on. Call it inside a gesture. */
  wake(): void;
  /** Stops listening and lets the device go. */
  close(): void;
  /** Closes, and brings the whole band back. */
  leave(): void;
  set(change: Partial<Pick<ListeningState, 'plays' | 'rhythmKeys' | 'octave' | 'soundsNotes' | 'sendTo' | 'headphones'>>): void;
  /** What the band leaves out. The click's pulse is switched on with it. */
  setBand(change: Partial<Band>): void;
  /** A touch on the tap field. */
  tap(at: InputMillis): void;
  /** Plays sixteen clicks to tap along with. */
  calibrate(): void;
  /** Plays music that is not the chart as it lies on the desk, under the desk's mix; call it inside a gesture. */
  playMusic(performance: Performance): void;
  /** The bars that a finding names, as a loop of the form; null before there is a report. */
  loopOf(bars: LoopBars): Loop | null;
  /** What "again, slower" plays after `tempo`; null where it cannot be slower. */
  slowerThan(tempo: HalfNotesPerMinute): HalfNotesPerMinute | null;
  /** Plays the bars that a finding names as a loop, at `tempo` where one is given. */
  playLoop(bars: LoopBars, tempo?: HalfNotesPerMinute): void;
  replay(withWhat: ReplayWith, shiftBars: 0 | 1): void;
  /** The rhythm of the last pass as a figure of the player's own, for the grid to confirm; null before there is one. */
  readFigure(): PlayedFigure | null;
  rate(rating: SelfRating): void;
  /** Hears of every note the moment it comes, for lights; nothing here waits for a frame. */
  onPlayed(listener: (played: Played) => void): () => void;
  /** Loudness of the microphone now. */
  level(): number;
}
