import {
  assert,
  type BassStroke,
  type Clave,
  type Colour,
  type Device,
  type DrumStroke,
  type HalfNotesPerMinute,
  type Hands,
  type Level,
  type Meter,
  type PianoStroke,
} from '../vocabulary';
import { ARRANGE_DEFAULTS, type ArrangeOptions } from './arrange-options';
import { bassLine } from './bass/tumbao';
import type { Chart, ChartNotice, Form, SoundingBar } from './chart/chart';
import { transposeChart } from './chart/transpose-chart';
import { unfold } from './chart/unfold';
import type { Alignment } from './clave/alignment';
import { harmonicTimeline } from './harmony/timeline';
import { buildFigure } from './montuno/figure';
import { guideTonesOnly } from './montuno/solo';
import { percussionParts } from './percussion/percussion';
import type { Key } from './pitch/key';
import { figureOfBars } from './score-bars';
import { alignmentOf, claveStrokes } from './score-clave';
import { arrangeNotices } from './score-notices';
import { styleOf } from './styles/styles';

export type { ArrangeOptions } from './arrange-options';

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
  /** The level of each bar, parallel to `bars`. */
  readonly levels: readonly Level[];
  /** The style of each bar, parallel to `bars`: a name of the style table. */
  readonly styles: readonly string[];
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
  const kind = form.clave.kind;
  const hands = options.hands ?? ARRANGE_DEFAULTS.hands;
  const colour = options.colour ?? style.colour;
  const barFigure = figureOfBars(form, options, styleAt, chart.clave.direction);
  const bass = bassLine(timeline, kind, (bar) => styleAt(bar).bass);
  const percussion = percussionParts(timeline.bars, kind, {
    styleOf: (bar) => options.style ?? bar.style,
    closed: timeline.closed,
    ...(options.percussion === undefined ? {} : { choice: options.percussion }),
  });
  const { rightHand, leftHand, unfit, idle } = buildFigure(timeline, {
    barFigure,
    claveKind: kind,
    colour,
    hands,
    stretch: options.stretch ?? ARRANGE_DEFAULTS.stretch,
    compass: options.compass ?? ARRANGE_DEFAULTS.compass,
    seed: options.seed ?? ARRANGE_DEFAULTS.seed,
    bass,
    edits: options.edits ?? [],
    ...(options.solo === 'scaffold' ? { instead: guideTonesOnly } : {}),
  });
  const { alignment, crossedAt } = alignmentOf(timeline.bars, rightHand.length > 0 ? rightHand : leftHand, form.clave);
  // Crossed on purpose needs no notice.
  const crossed = crossedAt === null || options.crossed ? null : { bar: crossedAt, states: alignment.states };
  return {
    title: transposed.title,
    key: transposed.key,
    meter: form.meter,
    style: style.name,
    closed: timeline.closed,
    clave: form.clave,
    tempo: transposed.tempo,
    level: options.level ?? ARRANGE_DEFAULTS.level,
    devices: options.devices ?? [],
    hands,
    colour,
    bars: timeline.bars,
    levels: timeline.bars.map((bar) => barFigure(bar).level),
    styles: timeline.bars.map((bar) => styleAt(bar).name),
    form,
    fromTick: timeline.fromTick,
    toTick: timeline.toTick,
    parts: { rightHand, leftHand, bass, clave: claveStrokes(timeline.bars, kind), percussion },
    alignment,
    notices: [...form.notices, ...arrangeNotices(timeline, styleAt, rightHand, { unfit, idle, crossed })],
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
