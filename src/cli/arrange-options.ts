import { STYLE_NAMES, styleNamed } from '../music/chart/style-names';
import type { ArrangeOptions } from '../music/score';
import { type ClaveKind, type Colour, type Device, type Direction, failed, type Hands, type Level, ok, type Result } from '../vocabulary';
import type { CommandLine, OptionRow } from './command-line';
import { FIGURE_FORM, FIGURE_ROWS, readFigureOptions } from './figure-options';
import { OptionReader, orList, quoted } from './option-reader';

/** The options of `arrange`, which `explain` and `export` share. */
export const ARRANGE_ROWS: readonly OptionRow[] = [
  ...['clave', 'kind', 'level', 'hands', 'colour', 'style', 'seed', 'transpose', 'vamp'].map((name) => ({ name, takes: 'value' as const })),
  { name: 'device', takes: 'value', repeatable: true },
  { name: 'open', takes: 'nothing' },
  { name: 'pickup', takes: 'nothing' },
  ...FIGURE_ROWS,
];
/** How they are written, for the list of commands. */
export const ARRANGE_FORM = `[--clave 2-3|3-2] [--kind son|rumba|bembe] [--level 1..6, by section without it] [--device NAME]… [--hands NAME] [--colour plain|jazz] [--style NAME] [--seed N] [--transpose N] [--vamp N] [--open] [--pickup] ${FIGURE_FORM}`;

const DIRECTIONS: readonly Direction[] = ['2-3', '3-2'];
const KINDS: readonly ClaveKind[] = ['son', 'rumba', 'bembe'];
const LEVEL_NUMBERS: readonly Level[] = [1, 2, 3, 4, 5, 6];
const DEVICES: readonly Device[] = ['octave-up', 'octaves-only', 'one-bar-neutral', 'extra-note', 'double-notes', 'half-step-out'];
const HANDS: readonly Hands[] = ['double', 'wide', 'tenths', 'contrary', 'tumbao', 'right', 'left'];
const COLOURS: readonly Colour[] = ['plain', 'jazz'];
/** Two octaves either way; the figure itself is placed within one. */
const MOST_SEMITONES = 24;
const MOST_PASSES = 64;
const LARGEST_SEED = 2 ** 31 - 1;

/** Turns the options into what `arrange` takes. Returns one line for each value that is wrong or not there yet. */
export function readArrangeOptions(values: CommandLine['values']): Result<ArrangeOptions, string> {
  const reader = new OptionReader(values);
  const direction = reader.oneOf('clave', DIRECTIONS);
  const kind = reader.oneOf('kind', KINDS);
  const level = levelOf(reader);
  const devices = reader.eachOf('device', DEVICES);
  const hands = reader.oneOf('hands', HANDS);
  const colour = reader.oneOf('colour', COLOURS);
  const style = styleOf(reader);
  const seed = reader.whole('seed', 0, LARGEST_SEED);
  const transpose = reader.whole('transpose', -MOST_SEMITONES, MOST_SEMITONES);
  const vampPasses = reader.whole('vamp', 1, MOST_PASSES);
  const figure = readFigureOptions(reader, direction);
  if (reader.faults.length > 0) return failed(...reader.faults);
  return ok({
    ...(direction && { direction }),
    ...(kind && { kind }),
    ...(level && { level }),
    ...(devices.length > 0 && { devices: [...new Set(devices)] }),
    ...(hands && { hands }),
    ...(colour && { colour }),
    ...(style && { style }),
    ...(seed !== undefined && { seed }),
    ...(transpose !== undefined && { transpose }),
    ...(vampPasses !== undefined && { vampPasses }),
    ...figure,
    closed: !reader.has('open'),
    pickup: reader.has('pickup'),
  });
}

function levelOf(reader: OptionReader): Level | undefined {
  const number = reader.whole('level', 1, LEVEL_NUMBERS.length);
  const level = LEVEL_NUMBERS.find((known) => known === number);
  return level;
}

function styleOf(reader: OptionReader): string | undefined {
  const text = reader.all('style').at(-1);
  if (text === undefined) return undefined;
  const style = styleNamed(text);
  if (!style) reader.faults.push(`--style must be ${orList(STYLE_NAMES.map(({ name }) => name))}, got ${quoted(text)}`);
  return style?.name;
}
