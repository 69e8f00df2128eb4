import { readMusicXml } from '../exchange/musicxml/read-musicxml';
import { IMPORT_WORDS } from '../words/import-screen';
import type { CommandLine } from './command-line';
import { done, type Outcome, refused, type World } from './outcome';

/** `import FILE`: prints the chart text of a score file; what could not be taken over goes to standard error, one line each. */
export function importCommand({ operands }: CommandLine, world: World): Outcome {
  const [path] = operands;
  if (path === undefined) return refused([`a file is missing: ${IMPORT_WORDS.expected.scoreFile}, or - for standard input`]);
  if (operands.length > 1) return refused([`one file at a time, got ${operands.length}`]);
  const bytes = world.readBytes(path);
  if (!bytes.ok) return refused(bytes.faults);
  const read = readMusicXml(bytes.value, path.replace(/^.*[\\/]/, ''));
  if (!read.ok) return { code: 1, out: '', err: read.faults.map((fault) => `${IMPORT_WORDS.fault(fault)}\n`).join('') };
  return done(read.value.text, read.value.notTaken.map((item) => `${IMPORT_WORDS.notTaken(item)}\n`).join(''));
}
