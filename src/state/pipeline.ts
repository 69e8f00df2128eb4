import type { Chart, ChartFault } from '../music/chart/chart';
import { pairsFor } from '../music/montuno/patterns';
import type { ArrangeOptions, Score } from '../music/score';
import { roundOf, vampRanges } from '../music/score-rounds';
import { feelNamed } from '../performance/feel';
import type { PerformOptions } from '../performance/perform';
import type { Performance } from '../performance/performance';
import { oppositeDirection, type Result } from '../vocabulary';
import { fitLoop } from './loop';
import type { CellPair, Loop, Settings } from './settings';

/** The pure stages that the pipeline joins: the real ones in the page, small ones in tests. */
export interface Stages {
  readonly readChart: (text: string) => Result<Chart, ChartFault>;
  readonly arrange: (chart: Chart, options: ArrangeOptions) => Score;
  readonly perform: (score: Score, options: PerformOptions) => Performance;
}

/** Every stage's result for one chart and one set of settings. */
export interface Music {
  readonly chart: Chart;
  /** The loop as it fits this form, or null. */
  readonly loop: Loop | null;
  /** What is played: the loop, or the whole form. */
  readonly score: Score;
  /** The whole form; `score` itself when nothing is looped. */
  readonly whole: Score;
  readonly performance: Performance;
}

/** From chart text to score and performance, each stage worked out again only when its inputs change. */
export interface Pipeline {
  /** Reads chart text. */
  readonly read: (text: string) => Result<Chart, ChartFault>;
  /** Arranges and performs a chart; a loop that no longer fits the form is fitted to it. */
  readonly make: (chart: Chart, settings: Settings) => Music;
  /** The whole form under the same settings in the other direction, for the lesson sheet. */
  readonly otherDirection: (chart: Chart, settings: Settings) => Score;
  /** The score that a performance was made from, or null for one that was not made here. */
  readonly scoreOf: (performance: Performance) => Score | null;
}

/** The settings that the arrangement depends on. */
const ARRANGED_BY = [
  'direction',
  'kind',
  'level',
  'devices',
  'hands',
  'colour',
  'seed',
  'transpose',
  'style',
  'stretch',
  'compass',
  'cells',
  'ownFigure',
  'crossed',
  'percussion',
  'solo',
  'edits',
] as const satisfies readonly (keyof Settings)[];
/** The settings that the music as a whole depends on. */
export const MADE_BY = [...ARRANGED_BY, 'loop', 'round', 'pulse', 'feel'] as const satisfies readonly (keyof Settings)[];
/** Settings as far as arranging goes. */
export type Arranging = Pick<Settings, (typeof ARRANGED_BY)[number]>;

/** The options of a figure: what is not set is left to the chart. Whole settings do. */
export function optionsOf(settings: Arranging, closed: boolean, range: Loop | null): ArrangeOptions {
  const {
    direction,
    kind,
    level,
    devices,
    hands,
    colour,
    seed,
    transpose,
    style,
    stretch,
    compass,
    cells,
    ownFigure,
    crossed,
    percussion,
    solo,
    edits,
  } = settings;
  return {
    direction,
    kind,
    devices,
    hands,
    colour,
    seed,
    transpose,
    stretch,
    compass,
    crossed,
    percussion,
    edits,
    closed,
    ...(level === 'by section' ? {} : { level }),
    ...(style === null ? {} : { style }),
    ...(cells !== null && goTogether(cells, kind) ? { cells } : {}),
    ...(ownFigure === null ? {} : { ownFigure }),
    ...(solo === null ? {} : { solo }),
    ...(range === null ? {} : { range }),
  };
}

/** Cells chosen by hand are played only with a clave that they go with. */
function goTogether(cells: CellPair, kind: Settings['kind']): boolean {
  return pairsFor(kind).some(({ two, three }) => two.id === cells.two && three.id === cells.three);
}

/** Joins the stages; each remembers its last result and is run again only when one of its inputs is another value. */
export function createPipeline(stages: Stages): Pipeline {
  /** The same settings as far as arranging goes are the same object, so that a new tempo or view arranges nothing again. */
  const arranging = rememberLast(
    (...values: readonly unknown[]): Arranging => Object.fromEntries(ARRANGED_BY.map((name, index) => [name, values[index]])) as Arranging,
  );
  const arrangingOf = (settings: Arranging): Arranging => arranging(...ARRANGED_BY.map((name) => settings[name]));
  const arrange = (chart: Chart, settings: Arranging, closed: boolean, range: Loop | null): Score =>
    stages.arrange(chart, optionsOf(settings, closed, range));
  const madeFrom = new WeakMap<Performance, Score>();
  const read = rememberLast(stages.readChart);
  const loopInForm = rememberLast(fitLoop);
  const arrangeWhole = rememberLast(arrange);
  const arrangeOther = rememberLast(arrange);
  const arrangeLoop = rememberLast(arrange);
  /** The open vamps of the form, each going round; a form played through holds them, a chosen loop does not. */
  const roundsOf = rememberLast((chart: Chart, settings: Arranging, whole: Score, closed: boolean): readonly Score[] =>
    vampRanges(whole.form, closed).map((range) => roundOf(whole, arrange(chart, settings, closed, range))),
  );
  const performed = (
    score: Score,
    rounds: readonly Score[],
    pulse: Settings['pulse'],
    feel: Settings['feel'],
    ending: boolean,
  ): Performance => {
    // Hands are silenced in the mix, which is heard at once, so both are always performed.
    const performance = stages.perform(score, { sounding: { right: true, left: true }, pulse, ending, feel: feelNamed(feel), rounds });
    madeFrom.set(performance, score);
    performance.vamps?.forEach(({ round }, index) => {
      madeFrom.set(round, rounds[index] ?? score);
    });
    return performance;
  };
  const perform = rememberLast(performed);
  const join = rememberLast(
    (chart: Chart, loop: Loop | null, score: Score, whole: Score, performance: Performance): Music => ({
      chart,
      loop,
      score,
      whole,
      performance,
    }),
  );
  return {
    read,
    scoreOf: (performance) => madeFrom.get(performance) ?? null,
    otherDirection: (chart, settings) =>
      arrangeOther(chart, { ...arrangingOf(settings), direction: oppositeDirection(settings.direction) }, true, null),
    make: (chart, settings) => {
      const ending = settings.round === 'once, then end';
      const figure = arrangingOf(settings);
      const whole = arrangeWhole(chart, figure, !ending, null);
      const loop = loopInForm(whole.form, settings.loop);
      const score = loop ? arrangeLoop(chart, figure, true, loop) : whole;
      const rounds = loop ? NO_ROUNDS : roundsOf(chart, figure, whole, !ending);
      return join(chart, loop, score, whole, perform(score, rounds, settings.pulse, settings.feel, ending && !loop));
    },
  };
}

const NO_ROUNDS: readonly Score[] = [];

function rememberLast<Inputs extends readonly unknown[], Output>(stage: (...inputs: Inputs) => Output): (...inputs: Inputs) => Output {
  let last: { readonly inputs: Inputs; readonly output: Output } | null = null;
  return (...inputs) => {
    if (last?.inputs.every((input, index) => Object.is(input, inputs[index]))) return last.output;
    last = { inputs, output: stage(...inputs) };
    return last.output;
  };
}
