import { MAX_TEXT_LENGTH } from '../../music/chart/limits';
import { readChart } from '../../music/chart/read';
import { LIBRARY_WORDS } from '../../words/library';
import {
  type GivenFile,
  type Intake,
  kindOfFile,
  kindOfJson,
  LARGEST_BACKUP,
  LARGEST_FILE,
  LARGEST_SHEET,
  type SheetReader,
  textOfBytes,
} from './intake';

/** The largest file of each kind that is read, in bytes. */
const LARGEST = { chart: LARGEST_FILE, sheet: LARGEST_SHEET, json: LARGEST_BACKUP } as const;

/** Reads files one after the other. A chart with faults is taken in as it is: they are shown where they can be mended. */
export async function takeIn(
  files: readonly GivenFile[],
  readSheet: SheetReader,
  add: (text: string) => string,
): Promise<readonly Intake[]> {
  const intakes: Intake[] = [];
  for (const file of files) intakes.push(await takeInOne(file, readSheet, add));
  return intakes;
}

async function takeInOne(file: GivenFile, readSheet: SheetReader, add: (text: string) => string): Promise<Intake> {
  const { name, bytes } = file;
  const refuse = (why: Extract<Intake, { kind: 'refused' }>['why'], sentence: string): Intake => ({ kind: 'refused', name, why, sentence });
  const kind = kindOfFile(name);
  if (kind === null) return refuse('unknown kind', LIBRARY_WORDS.unknownKind);
  const most = LARGEST[kind];
  if (bytes.length > most) return refuse('too large', LIBRARY_WORDS.tooLarge(bytes.length, most));
  if (kind === 'sheet') {
    const sheet = await readSheet(file);
    if (!sheet.ok) return refuse('unreadable', sheet.faults.map(({ sentence }) => sentence).join(' '));
    return taken(name, sheet.value.text, sheet.value.leftOut, add);
  }
  const text = textOfBytes(bytes);
  if (text === null) return refuse('no text', LIBRARY_WORDS.noText);
  if (kind === 'json') {
    const holds = kindOfJson(text);
    if (holds === null) return refuse('unknown kind', LIBRARY_WORDS.unknownKind);
    return holds === 'backup' ? { kind: holds, name, text } : { kind: holds, name, bytes };
  }
  if (text.length > MAX_TEXT_LENGTH) return refuse('too large', LIBRARY_WORDS.tooLarge(text.length, MAX_TEXT_LENGTH));
  return taken(name, text, [], add);
}

function taken(name: string, text: string, leftOut: readonly string[], add: (text: string) => string): Intake {
  const reading = readChart(text);
  return { kind: 'taken in', name, chartId: add(text), faults: reading.ok ? 0 : reading.faults.length, leftOut };
}
