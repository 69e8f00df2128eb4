import { MAX_TEXT_LENGTH } from '../../music/chart/limits';
import { failed, ok, type Result } from '../../vocabulary';
import { BACKUP_VERSION, type Backup, type BackupChart, type BackupEntry, type BackupSet } from './backup';

/** What can be wrong with a backup file. The first four refuse the whole file; the others leave one item out. */
export type BackupFaultCode =
  | 'no json'
  | 'no backup'
  | 'newer version'
  | 'no list'
  | 'bad chart'
  | 'bad set'
  | 'bad entry'
  | 'bad record'
  | 'id twice';

/** A fault in a backup file: where it stands in the file's JSON, and what stands there. */
export interface BackupFault {
  readonly code: BackupFaultCode;
  /** As in `charts[3].text`; empty for the file itself. */
  readonly path: string;
  /** The first characters of what was found. */
  readonly found: string;
}

/** A backup that was read, and the items that had to be left out of it. */
export interface ReadBackup {
  readonly backup: Backup;
  readonly leftOut: readonly BackupFault[];
}

type Fields = Readonly<Record<string, unknown>>;

/** Records that a backup never brings back: they belong to one device. */
const OWN_KEYS = /^(chart\/|shelf$|sets$|desk$|safety$|offline$|quarantine\/|settings\/(?!demo-))/;

/** Reads the text of a backup file. One bad item never costs the others. */
export function readBackup(text: string): Result<ReadBackup, BackupFault> {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return failed({ code: 'no json', path: '', found: shortened(text) });
  }
  const fields = fieldsOf(parsed);
  if (fields?.contratiempo !== 'backup' || typeof fields.version !== 'number')
    return failed({ code: 'no backup', path: '', found: shortened(text) });
  if (fields.version > BACKUP_VERSION) return failed({ code: 'newer version', path: 'version', found: String(fields.version) });

  const leftOut: BackupFault[] = [];
  const list = <Item extends { readonly id: string }>(
    name: 'charts' | 'sets' | 'journal',
    code: BackupFaultCode,
    read: (item: Fields) => Item | string,
  ): readonly Item[] => {
    const items = fields[name];
    if (!Array.isArray(items)) {
      leftOut.push({ code: 'no list', path: name, found: shown(items) });
      return [];
    }
    const seen = new Set<string>();
    return items.flatMap((item: unknown, index) => {
      const result = read(fieldsOf(item) ?? {});
      const path = `${name}[${index}]`;
      if (typeof result === 'string') leftOut.push({ code, path: `${path}.${result}`, found: shown(fieldsOf(item)?.[result]) });
      else if (seen.has(result.id)) leftOut.push({ code: 'id twice', path: `${path}.id`, found: result.id });
      else {
        seen.add(result.id);
        return [result];
      }
      return [];
    });
  };
  const charts = list('charts', 'bad chart', readChartItem);
  const sets = list('sets', 'bad set', readSet);
  const journal = list('journal', 'bad entry', readEntry);
  const made = typeof fields.made === 'string' && !Number.isNaN(Date.parse(fields.made)) ? fields.made : new Date(0).toISOString();
  return ok({ backup: { made, charts, sets, journal, records: readRecords(fieldsOf(fields.records) ?? {}, leftOut) }, leftOut });
}

/** The item, or the name of the first field that is wrong. */
function readChartItem({ id, title, changed, text, good, settings }: Fields): BackupChart | string {
  if (!isName(id)) return 'id';
  if (typeof title !== 'string') return 'title';
  if (!isMoment(changed)) return 'changed';
  if (typeof text !== 'string' || text.length > MAX_TEXT_LENGTH) return 'text';
  const sound = typeof good === 'string' && good.length <= MAX_TEXT_LENGTH ? good : null;
  return { id, title, changed, text, good: sound, settings: typeof settings === 'string' && isRecord(settings) ? settings : null };
}

function readSet({ id, name, date, charts, changed }: Fields): BackupSet | string {
  if (!isName(id)) return 'id';
  if (typeof name !== 'string') return 'name';
  if (date !== null && !(typeof date === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(date))) return 'date';
  if (!Array.isArray(charts) || !charts.every(isName)) return 'charts';
  return isMoment(changed) ? { id, name, date, charts, changed } : 'changed';
}

function readEntry({ id, at, text }: Fields): BackupEntry | string {
  if (!isName(id)) return 'id';
  if (!isMoment(at)) return 'at';
  return typeof text === 'string' ? { id, at, text } : 'text';
}

function readRecords(fields: Fields, leftOut: BackupFault[]): Readonly<Record<string, string>> {
  const good = Object.entries(fields).filter((entry): entry is [string, string] => {
    const [key, text] = entry;
    const sound = key !== '__proto__' && isName(key) && !OWN_KEYS.test(key) && typeof text === 'string' && isRecord(text);
    if (!sound) leftOut.push({ code: 'bad record', path: `records.${shortened(key)}`, found: shown(text) });
    return sound;
  });
  return Object.fromEntries(good);
}

/** True for the text of a saved record: JSON of an object that names what it is and its version. */
function isRecord(text: string): boolean {
  try {
    const fields = fieldsOf(JSON.parse(text));
    return typeof fields?.record === 'string' && typeof fields.version === 'number';
  } catch {
    return false;
  }
}

/** True for a record that goes into a backup as it is. */
export const isOwnRecord = (key: string): boolean => OWN_KEYS.test(key);

const fieldsOf = (value: unknown): Fields | null =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : null;
const isName = (value: unknown): value is string => typeof value === 'string' && value.length > 0 && value.length <= 200;
const isMoment = (value: unknown): value is number => typeof value === 'number' && value >= 0 && value <= 8.64e15;
const shortened = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text);
const shown = (value: unknown): string => shortened(value === undefined ? '' : (JSON.stringify(value) ?? ''));
