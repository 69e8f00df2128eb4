import type { CommandLine } from './command-line';

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

/** Longest piece of a typed value that is repeated. */
const LONGEST_QUOTE = 40;
/** A typed value in quotes, cut where it is long. */
export const quoted = (text: string): string => JSON.stringify(text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text);
/** `a, b or c`. */
export const orList = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
