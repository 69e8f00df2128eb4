import { failed, ok, type Result } from '../vocabulary';

/** One option of a command: its name without dashes, whether a value follows, whether it may be given more than once. */
export interface OptionRow {
  readonly name: string;
  readonly takes: 'value' | 'nothing';
  readonly repeatable?: boolean;
}

/** A command line taken apart. `values` holds every value of an option in order; an option without value holds an empty string. */
export interface CommandLine {
  readonly operands: readonly string[];
  readonly values: ReadonlyMap<string, readonly string[]>;
}

/**
 * Takes the words after a command apart. `--name value` and `--name=value` are the same; `--` ends options; `-` alone is an operand.
 * A value may begin with a dash (`--transpose -3`). Returns one line for each thing that is wrong.
 */
export function readCommandLine(words: readonly string[], rows: readonly OptionRow[]): Result<CommandLine, string> {
  const operands: string[] = [];
  const values = new Map<string, string[]>();
  const faults: string[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const word = words[at] ?? '';
    if (word === '--') {
      operands.push(...words.slice(at + 1));
      break;
    }
    if (word === '-' || !word.startsWith('-')) {
      operands.push(word);
      continue;
    }
    const [, name = '', joined] = /^--?([^=]*)(?:=(.*))?$/s.exec(word) ?? [];
    const row = word.startsWith('--') ? rows.find((candidate) => candidate.name === name) : undefined;
    if (!row) {
      faults.push(
        `unknown option ${word.split('=')[0]}${rows.length === 0 ? '' : `; expected ${rows.map((known) => `--${known.name}`).join(' ')}`}`,
      );
      continue;
    }
    const next = words[at + 1];
    if (row.takes === 'nothing' && joined !== undefined) faults.push(`--${name} takes no value`);
    if (row.takes === 'value' && joined === undefined) {
      if (next === undefined || next === '--' || rows.some((known) => `--${known.name}` === next)) {
        faults.push(`--${name} needs a value`);
        continue;
      }
      at += 1;
    }
    const earlier = values.get(name);
    if (earlier && !row.repeatable) faults.push(`--${name} is given twice`);
    values.set(name, [...(earlier ?? []), row.takes === 'nothing' ? '' : (joined ?? next ?? '')]);
  }
  return faults.length > 0 ? failed(...faults) : ok({ operands, values });
}
