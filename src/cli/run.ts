import { ARRANGE_FORM, ARRANGE_ROWS } from './arrange-options';
import { arrangeCommand, checkCommand, explainCommand } from './chart-commands';
import { type CommandLine, type OptionRow, readCommandLine } from './command-line';
import { EXPORT_ROWS, exportCommand } from './export-command';
import { WAV_FORM } from './export-wav';
import { importCommand } from './import-command';
import { alignmentCommand, chordCommand, claveCommand } from './music-commands';
import { done, type Outcome, refused, type World } from './outcome';
import { PACK_FORM, PACK_ROWS, packCommand } from './pack-command';

interface Command {
  readonly name: string;
  /** What follows the name, for the list of commands. */
  readonly form: string;
  readonly options: readonly OptionRow[];
  readonly run: (line: CommandLine, world: World) => Outcome;
}

const value = (name: string): OptionRow => ({ name, takes: 'value' });

const COMMANDS: readonly Command[] = [
  { name: 'arrange', form: `CHART ${ARRANGE_FORM} --format json|grid`, options: [...ARRANGE_ROWS, value('format')], run: arrangeCommand },
  { name: 'check', form: 'CHART', options: [], run: checkCommand },
  { name: 'chord', form: 'SYMBOL…', options: [], run: chordCommand },
  { name: 'alignment', form: 'GRID… [--clave 2-3|3-2]', options: [value('clave')], run: alignmentCommand },
  {
    name: 'clave',
    form: '[--clave 2-3|3-2] [--kind son|rumba|bembe] --format json|grid',
    options: [value('clave'), value('kind'), value('format')],
    run: claveCommand,
  },
  { name: 'explain', form: 'CHART --bar N, with the options of arrange', options: [...ARRANGE_ROWS, value('bar')], run: explainCommand },
  {
    name: 'export',
    form: `CHART --format midi|musicxml|wav|sheet --out FILE [--feel straight|measured], with the options of arrange; a FILE ending in .mxl is compressed; WAV: ${WAV_FORM}`,
    options: [...ARRANGE_ROWS, ...EXPORT_ROWS],
    run: exportCommand,
  },
  { name: 'pack', form: PACK_FORM, options: PACK_ROWS, run: packCommand },
  { name: 'import', form: 'FILE.musicxml|FILE.xml|FILE.mxl, printed as chart text', options: [], run: importCommand },
];

const NAMES = COMMANDS.map(({ name }) => name).join(' ');

/** Runs the command line: the words after the program's name. Touches nothing but `world`. */
export function run(words: readonly string[], world: World): Outcome {
  const [name, ...rest] = words;
  if (name === undefined) return refused([`a command is missing; expected one of ${NAMES}`]);
  if (name === '--help' || name === 'help') return done(help());
  const command = COMMANDS.find((candidate) => candidate.name === name);
  if (!command) return refused([`unknown command ${JSON.stringify(name)}; expected one of ${NAMES}`]);
  const line = readCommandLine(rest, command.options);
  return line.ok ? command.run(line.value, world) : refused(line.faults.map((fault) => `${name}: ${fault}`));
}

function help(): string {
  const commands = COMMANDS.map((command) => `  ${command.name} ${command.form}`);
  const codes =
    'Exit code 0: done; 1: the chart has faults; 2: bad use, or not there yet. A chart of - is standard input; -- ends options.';
  return `${['Commands', ...commands, '', codes].join('\n')}\n`;
}
