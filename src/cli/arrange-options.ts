import { STYLE_NAMES, styleNamed } from '../music/chart/style-names';
import type { ArrangeOptions } from '../music/score';
import { type ClaveKind, type Colour, type Device, type Direction, failed, type Hands, type Level, ok, type Result } from '../vocabulary';
import type { CommandLine, OptionRow } from './command-line';

/** The options of `arrange`, which `explain` and `export` share. */
export const ARRANGE_ROWS: readonly OptionRow[] = [
  ...['clave', 'kind', 'level', 'hands', 'colour', 'style', 'seed', 'transpose', 'vamp'].map((name) => ({ name, takes: 'value' as const })),
  { name: 'device', takes: 'value', repeatable: true },
  { name: 'open', takes: 'nothing' },
  { name: 'pickup', takes: 'nothing' },
];

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

/** Reads the values of options one by one and keeps every fault. */
export class OptionReader {
  readonly faults: string[] = [];
  readonly #values: CommandLine['values'];

  constructor(values: CommandLine['values']) {
    this.#values = values;
  }

  has(name: string): boolean {
    return this.#values.has(name);
  }

  all(name: string): readonly string[] {
    return this.#values.get(name) ?? [];
  }

  /** The value of an option as one of `allowed`, or undefined when it is missing or wrong. */
  oneOf<Value extends string>(name: string, allowed: readonly Value[]): Value | undefined {
    return this.all(name)
      .map((text) => this.#member(name, text, allowed))
      .at(-1);
  }

  /** Every value of a repeatable option. */
  eachOf<Value extends string>(name: string, allowed: readonly Value[]): readonly Value[] {
    return this.all(name).flatMap((text) => this.#member(name, text, allowed) ?? []);
  }

  /** A whole number from `from` to `to`, or undefined. */
  whole(name: string, from: number, to: number): number | undefined {
    const text = this.all(name).at(-1);
    if (text === undefined) return undefined;
    const value = Number(text);
    if (/^[+-]?\d+$/.test(text) && value >= from && value <= to) return value;
    this.faults.push(`--${name} must be a whole number from ${from} to ${to}, got ${quoted(text)}`);
    return undefined;
  }

  #member<Value extends string>(name: string, text: string, allowed: readonly Value[]): Value | undefined {
    const found = allowed.find((value) => value === text);
    if (found === undefined) this.faults.push(`--${name} must be ${orList(allowed)}, got ${quoted(text)}`);
    return found;
  }
}

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

/** Longest piece of a typed value that is repeated. */
const LONGEST_QUOTE = 40;
const quoted = (text: string): string => JSON.stringify(text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text);
const orList = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
