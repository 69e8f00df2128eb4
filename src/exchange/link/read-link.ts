import { failed, ok, type Result } from '../../vocabulary';
import { type Lesson, LINK_MARK, LINK_SETTINGS, LINK_VERSION, type LinkFault, LONGEST_NOTE } from './lesson';
import { unpack } from './packed';

/** Reads the part of an address behind `#`: hostile input, capped (packed.ts); nothing is thrown. */
export function readLink(hash: string): Result<Lesson, LinkFault> {
  const json = unpack(LINK_MARK, LINK_VERSION, hash);
  if (!json.ok) return json;
  const lesson = lessonFrom(json.value);
  return lesson ? ok(lesson) : failed({ code: 'no lesson', found: 0 });
}

function lessonFrom(json: string): Lesson | null {
  let parsed: unknown;
  try {
    parsed = JSON.parse(json);
  } catch {
    return null;
  }
  if (!Array.isArray(parsed)) return null;
  const [text, settings, note] = parsed as readonly unknown[];
  if (typeof text !== 'string' || typeof note !== 'string' || note.length > LONGEST_NOTE) return null;
  if (typeof settings !== 'object' || settings === null) return null;
  const fields = settings as Readonly<Record<string, unknown>>;
  const known = LINK_SETTINGS.flatMap((name) => {
    const value = Object.hasOwn(fields, name) ? fields[name] : undefined;
    return typeof value === 'number' || (typeof value === 'string' && value.length <= 40) ? [[name, value] as const] : [];
  });
  return { text: text.replace(/\r\n?/g, '\n'), note, settings: Object.fromEntries(known) };
}
