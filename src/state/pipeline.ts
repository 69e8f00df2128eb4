import type { Chart, ChartFault } from '../music/chart/chart';
import type { ArrangeOptions, Score } from '../music/score';
import type { PerformOptions } from '../performance/perform';
import type { Performance } from '../performance/performance';
import type { Result } from '../vocabulary';
import { fitLoop } from './loop';
import type { Loop, Settings } from './settings';

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

type ArrangeInputs = readonly [
  chart: Chart,
  loop: Loop | null,
  direction: Settings['direction'],
  kind: Settings['kind'],
  level: Settings['level'],
  devices: Settings['devices'],
  hands: Settings['hands'],
  colour: Settings['colour'],
  seed: number,
  transpose: number,
  closed: boolean,
];

/** Joins the stages; each remembers its last result and is run again only when one of its inputs is another value. */
export function createPipeline(stages: Stages): Pipeline {
  const arrange = (...[chart, loop, direction, kind, level, devices, hands, colour, seed, transpose, closed]: ArrangeInputs): Score =>
    stages.arrange(chart, { direction, kind, level, devices, hands, colour, seed, transpose, closed, ...(loop ? { range: loop } : {}) });
  const madeFrom = new WeakMap<Performance, Score>();
  const read = rememberLast(stages.readChart);
  const loopInForm = rememberLast(fitLoop);
  const arrangeWhole = rememberLast(arrange);
  const arrangeOther = rememberLast(arrange);
  const arrangeLoop = rememberLast(arrange);
  const perform = rememberLast((score: Score, pulse: Settings['pulse'], ending: boolean): Performance => {
    // Hands are silenced in the mix, which is heard at once, so both are always performed.
    const performance = stages.perform(score, { sounding: { right: true, left: true }, pulse, ending });
    madeFrom.set(performance, score);
    return performance;
  });
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
    otherDirection: (chart, { direction, kind, level, devices, hands, colour, seed, transpose }) =>
      arrangeOther(chart, null, direction === '2-3' ? '3-2' : '2-3', kind, level, devices, hands, colour, seed, transpose, true),
    make: (chart, settings) => {
      const { direction, kind, level, devices, hands, colour, seed, transpose, round, pulse } = settings;
      const ending = round === 'once, then end';
      const whole = arrangeWhole(chart, null, direction, kind, level, devices, hands, colour, seed, transpose, !ending);
      const loop = loopInForm(whole.form, settings.loop);
      const score = loop ? arrangeLoop(chart, loop, direction, kind, level, devices, hands, colour, seed, transpose, true) : whole;
      return join(chart, loop, score, whole, perform(score, pulse, ending && !loop));
    },
  };
}

function rememberLast<Inputs extends readonly unknown[], Output>(stage: (...inputs: Inputs) => Output): (...inputs: Inputs) => Output {
  let last: { readonly inputs: Inputs; readonly output: Output } | null = null;
  return (...inputs) => {
    if (last?.inputs.every((input, index) => Object.is(input, inputs[index]))) return last.output;
    last = { inputs, output: stage(...inputs) };
    return last.output;
  };
}
