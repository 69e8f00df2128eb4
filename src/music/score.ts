import type {
  BassStroke,
  Clave,
  Colour,
  Device,
  Direction,
  DrumStroke,
  HalfNotesPerMinute,
  Hands,
  Level,
  PianoStroke,
} from '../vocabulary';
import type { ChartNotice, Form, Meter, SoundingBar } from './chart/chart';
import type { Alignment } from './clave/alignment';
import type { Key } from './pitch/key';

/** What a player may set; everything missing has a stated default. */
export interface ArrangeOptions {
  /** Overrides the chart's clave (the start; restarts are swapped with it). */
  readonly direction?: Direction;
  readonly kind?: Clave['kind'];
  readonly style?: string;
  /** Fixed level for the whole form; without it 2. */
  readonly level?: Level;
  readonly devices?: readonly Device[];
  readonly hands?: Hands;
  readonly colour?: Colour;
  /** Makes free choices repeatable; 0 when missing. */
  readonly seed?: number;
  /** Semitones. */
  readonly transpose?: number;
  /** Passes of an open vamp; 1 (2 if its length is odd) when missing. */
  readonly vampPasses?: number;
  /** Closed (the last bar leads to the first) unless false. */
  readonly closed?: boolean;
  readonly pickup?: boolean;
  /** Sounding bars [from, to) to arrange as a closed loop; the whole form when missing. */
  readonly range?: { readonly fromBar: number; readonly toBar: number };
}

/** The arrangement: every part in whole ticks from the first bar of the form. */
export interface Score {
  readonly title: string;
  readonly key: Key;
  readonly meter: Meter;
  readonly style: string;
  readonly closed: boolean;
  readonly clave: Clave;
  readonly tempo: HalfNotesPerMinute;
  readonly level: Level;
  readonly devices: readonly Device[];
  readonly hands: Hands;
  readonly colour: Colour;
  /** The bars that are arranged: the whole form, or the loop of `ArrangeOptions.range`. */
  readonly bars: readonly SoundingBar[];
  readonly form: Form;
  /** First tick, and the tick after the last. */
  readonly fromTick: number;
  readonly toTick: number;
  readonly parts: {
    readonly rightHand: readonly PianoStroke[];
    readonly leftHand: readonly PianoStroke[];
    readonly bass: readonly BassStroke[];
    readonly clave: readonly DrumStroke[];
    readonly percussion: Readonly<Record<string, readonly DrumStroke[]>>;
  };
  readonly alignment: Alignment;
  readonly notices: readonly ChartNotice[];
}
