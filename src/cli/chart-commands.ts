import { scoreJson } from '../exchange/score-json';
import type { Chart, ChartFault } from '../music/chart/chart';
import { MAX_SOUNDING_BARS } from '../music/chart/limits';
import { readChart } from '../music/chart/read';
import { unfold } from '../music/chart/unfold';
import { type ArrangeOptions, arrange, type Score } from '../music/score';
import { failed, ok, type Result } from '../vocabulary';
import { faultSentence } from '../words/fault';
import { NOTICES } from '../words/notice';
import { readArrangeOptions } from './arrange-options';
import type { CommandLine } from './command-line';
import { explainBar } from './explain';
import { againstClave } from './figure-options';
import { OptionReader } from './option-reader';
import { done, type Outcome, refused, type World } from './outcome';
import { printGrid } from './print-grid';

const JSON_OR_GRID = ['json', 'grid'] as const;

/** `check CHART`: the faults as a JSON array, exit code 1 if there are any. Notices go to standard error. */
export function checkCommand({ operands }: CommandLine, world: World): Outcome {
  const text = onlyChart(operands, world);
  if (!text.ok) return refused(text.faults);
  const read = readChart(text.value);
  if (!read.ok) return { code: 1, out: faultsJson(read.faults), err: '' };
  return done(faultsJson([]), lines(unfold(read.value).notices.map((notice) => NOTICES.sentence(notice))));
}

/** `arrange CHART`: the score as JSON, or as a text grid. */
export function arrangeCommand(line: CommandLine, world: World): Outcome {
  const reader = new OptionReader(line.values);
  const format = reader.oneOf('format', JSON_OR_GRID) ?? 'json';
  return withScore(line, world, reader.faults, format === 'json', (score) =>
    done(format === 'json' ? `${JSON.stringify(scoreJson(score), null, 1)}\n` : printGrid(score)),
  );
}

/** `explain CHART --bar N`: every stroke of one bar, counted from 1, with its reasons. */
export function explainCommand(line: CommandLine, world: World): Outcome {
  const reader = new OptionReader(line.values);
  const bar = reader.whole('bar', 1, Number.MAX_SAFE_INTEGER);
  if (!reader.has('bar')) reader.faults.push('explain needs --bar N, counted from 1');
  return withScore(line, world, reader.faults, false, (score) => {
    const index = (bar ?? 0) - 1;
    return index < score.bars.length ? done(explainBar(score, index)) : refused([`--bar ${bar}: the form has ${score.bars.length} bars`]);
  });
}

/** Reads options and chart, arranges, and hands the score on. What is wrong with the command line is said before the chart is opened. */
export function withScore(
  line: CommandLine,
  world: World,
  faults: readonly string[],
  asJson: boolean,
  use: (score: Score, text: string, options: ArrangeOptions) => Outcome,
): Outcome {
  return withChart(line, world, faults, asJson, (chart, options, text) => use(arrange(chart, options), text, options));
}

/** As `withScore`, but what is used is the chart, with the options that fit it. */
export function withChart(
  line: CommandLine,
  world: World,
  faults: readonly string[],
  asJson: boolean,
  use: (chart: Chart, options: ArrangeOptions, text: string) => Outcome,
): Outcome {
  const options = readArrangeOptions(line.values);
  const wrong = [...faults, ...(options.ok ? [] : options.faults)];
  if (!options.ok || wrong.length > 0) return refused(wrong);
  const text = onlyChart(line.operands, world);
  if (!text.ok) return refused(text.faults);
  const read = readChart(text.value);
  if (!read.ok)
    return { code: 1, out: asJson ? faultsJson(read.faults) : '', err: lines(read.faults.map((fault) => faultSentence(fault))) };
  const asked = inDirectionOf(read.value, options.value);
  const unfit = against(read.value, asked);
  return unfit === null ? use(read.value, asked, text.value) : refused([unfit]);
}

/** A figure is written in the direction that sounds: the one asked for, else the chart's. */
function inDirectionOf(chart: Chart, options: ArrangeOptions): ArrangeOptions {
  const { ownFigure, direction } = options;
  return ownFigure ? { ...options, ownFigure: { ...ownFigure, direction: direction ?? chart.clave.direction } } : options;
}

/** An option that does not fit the chart, as one line, or null. */
function against(chart: Chart, options: ArrangeOptions): string | null {
  const { kind, vampPasses } = options;
  const { meter, clave } = chart;
  if (kind !== undefined && (kind === 'bembe') !== (meter === '6/8')) {
    return `--kind ${kind} needs a chart in ${kind === 'bembe' ? '6/8' : '4/4'}, this one is in ${meter}`;
  }
  const against = againstClave(options, meter, kind ?? clave.kind);
  if (against !== null) return against;
  const bars = vampPasses === undefined ? 0 : barsWithVamps(chart, vampPasses);
  return bars > MAX_SOUNDING_BARS
    ? `--vamp ${vampPasses}: the form would have ${bars} bars, at most ${MAX_SOUNDING_BARS} are played`
    : null;
}

/** Length of the form when every open section is played so many times, without laying all of it out. */
function barsWithVamps(chart: Chart, passes: number): number {
  const { bars, visits } = unfold(chart, { vampPasses: 1 });
  const open = visits.filter(({ onCue }) => onCue).reduce((sum, { fromBar, toBar }) => sum + toBar - fromBar, 0);
  return bars.length + open * (passes - 1);
}

function onlyChart(operands: readonly string[], world: World): Result<string, string> {
  const [path] = operands;
  if (path === undefined) return failed('a chart is missing: a file name, or - for standard input');
  if (operands.length > 1) return failed(`one chart at a time, got ${operands.length}`);
  const text = world.readText(path);
  return text.ok ? ok(text.value) : text;
}

const lines = (sentences: readonly string[]): string => sentences.map((sentence) => `${sentence}\n`).join('');

/** One fault a line, and a JSON array as a whole. */
function faultsJson(faults: readonly ChartFault[]): string {
  if (faults.length === 0) return '[]\n';
  const rows = faults.map(({ line, column, text, expected, nearest }) => JSON.stringify({ line, column, text, expected, nearest }));
  return `[\n${rows.join(',\n')}\n]\n`;
}
