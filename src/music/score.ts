import {
  assert,
  type BassStroke,
  type Clave,
  type Colour,
  type Device,
  type Direction,
  type DrumStroke,
  type HalfNotesPerMinute,
  type Hands,
  type Level,
  type PianoStroke,
} from '../vocabulary';
import { bassLine } from './bass/tumbao';
import type { Chart, ChartNotice, Form, Meter, SoundingBar } from './chart/chart';
import { transposeChart } from './chart/transpose-chart';
import { unfold } from './chart/unfold';
import type { Alignment } from './clave/alignment';
import { harmonicTimeline } from './harmony/timeline';
import { buildFigure } from './montuno/figure';
import type { Key } from './pitch/key';
import { alignmentOf, claveStrokes } from './score-clave';
import { styleOf } from './styles/styles';

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

/** Defaults of what a player has not set. */
export const ARRANGE_DEFAULTS = { level: 2, hands: 'double', seed: 0, transpose: 0 } as const satisfies Partial<ArrangeOptions>;

/**
 * A chart becomes an arrangement: the form is unfolded, the harmony laid out, bass and piano found by search, the clave drawn.
 *
 * Deterministic: the same chart and options always give the same score. Ticks count from the first bar of the form, also when only
 * the bars of `options.range` are arranged. The chart must come from `readChart`; throws on a range outside the form.
 */
export function arrange(chart: Chart, options: ArrangeOptions = {}): Score {
  const transposed = transposeChart(chart, options.transpose ?? ARRANGE_DEFAULTS.transpose);
  const closed = options.closed ?? true;
  const form = formOf(transposed, options, closed);
  const range = options.range ?? { fromBar: 0, toBar: form.bars.length };
  assert(
    range.fromBar >= 0 && range.fromBar < range.toBar && range.toBar <= form.bars.length,
    `bars must lie in 0 to ${form.bars.length}, got ${range.fromBar} to ${range.toBar}`,
  );
  const timeline = harmonicTimeline(form, { ...range, closed: closed || options.range !== undefined });
  const style = styleOf(options.style ?? transposed.style);
  const styleAt = (bar: SoundingBar) => (options.style === undefined ? styleOf(bar.style) : style);
  const level = options.level ?? ARRANGE_DEFAULTS.level;
  const hands = options.hands ?? ARRANGE_DEFAULTS.hands;
  const devices = options.devices ?? [];
  const colour = options.colour ?? style.colour;
  const bass = bassLine(timeline, form.clave.kind, (bar) => styleAt(bar).bass);
  const outsideClave = (bar: SoundingBar) => !styleAt(bar).onClave;
  const { rightHand, leftHand } = buildFigure(timeline, {
    level,
    claveKind: form.clave.kind,
    colour,
    devices,
    hands,
    seed: options.seed ?? ARRANGE_DEFAULTS.seed,
    outsideClave,
    bass,
  });
  return {
    title: transposed.title,
    key: transposed.key,
    meter: form.meter,
    style: style.name,
    closed: timeline.closed,
    clave: form.clave,
    tempo: transposed.tempo,
    level,
    devices,
    hands,
    colour,
    bars: timeline.bars,
    form,
    fromTick: timeline.fromTick,
    toTick: timeline.toTick,
    parts: { rightHand, leftHand, bass, clave: claveStrokes(timeline.bars, form.clave.kind), percussion: {} },
    alignment: alignmentOf(timeline.bars, rightHand.length > 0 ? rightHand : leftHand, form.clave),
    notices: form.notices,
  };
}

/** The form as it sounds, with the player's clave in place of the chart's. */
function formOf(chart: Chart, options: ArrangeOptions, closed: boolean): Form {
  const form = unfold(chart, {
    ...(options.direction ? { direction: options.direction } : {}),
    ...(options.vampPasses === undefined ? {} : { vampPasses: options.vampPasses }),
    pickup: options.pickup ?? false,
    loops: closed,
  });
  return { ...form, clave: { ...form.clave, kind: claveKindIn(form.meter, options.kind ?? form.clave.kind) } };
}

/** The bell belongs to 6/8 and the other claves to 4/4; a kind from the other meter gives that meter's usual one. */
function claveKindIn(meter: Meter, kind: Clave['kind']): Clave['kind'] {
  if (meter === '6/8') return 'bembe';
  return kind === 'bembe' ? 'son' : kind;
}
