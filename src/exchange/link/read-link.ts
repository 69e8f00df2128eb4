import { Inflate, strFromU8 } from 'fflate';
import { failed, ok, type Result } from '../../vocabulary';
import { fromBase64Url } from './base64url';
import { checksum } from './checksum';
import { type Lesson, LINK_MARK, LINK_SETTINGS, LINK_VERSION, type LinkFault, LONGEST_LINK, LONGEST_NOTE, MOST_UNPACKED } from './lesson';

/** Packed bytes that are unpacked at a time: deflate makes at most 1032 bytes of one, so that no step can fill the memory. */
const STEP = 32;

/** Reads the part of an address behind `#`. It is hostile input: every size is capped before anything is made of it, and nothing is thrown. */
export function readLink(hash: string): Result<Lesson, LinkFault> {
  if (!hash.startsWith(LINK_MARK)) return failed({ code: 'no link', found: 0 });
  if (hash.length > LONGEST_LINK) return failed({ code: 'too long', found: hash.length });
  const [, version = '', payload = ''] = /^#l=(\d{1,4})\.(.*)$/.exec(hash) ?? [];
  if (version === '') return failed({ code: 'damaged', found: 0 });
  if (Number(version) > LINK_VERSION) return failed({ code: 'newer version', found: Number(version) });
  const bytes = fromBase64Url(payload);
  if (!bytes || bytes.length < 5 || Number(version) !== LINK_VERSION) return failed({ code: 'damaged', found: 0 });
  const json = unpacked(bytes.subarray(4));
  if (typeof json === 'string') return failed({ code: json, found: MOST_UNPACKED });
  if (checksum(json) !== new DataView(bytes.buffer, bytes.byteOffset).getUint32(0, true)) return failed({ code: 'damaged', found: 0 });
  const lesson = lessonFrom(json);
  return lesson ? ok(lesson) : failed({ code: 'no lesson', found: 0 });
}

/** Unpacks step by step and stops at the first byte too many. */
function unpacked(packed: Uint8Array): Uint8Array | 'damaged' | 'too much inside' {
  const chunks: Uint8Array[] = [];
  let length = 0;
  let ended = false;
  const inflate = new Inflate((chunk, final) => {
    length += chunk.length;
    if (length <= MOST_UNPACKED) chunks.push(chunk);
    ended = final;
  });
  try {
    for (let at = 0; at < packed.length && length <= MOST_UNPACKED; at += STEP)
      inflate.push(packed.subarray(at, at + STEP), at + STEP >= packed.length);
  } catch {
    return length > MOST_UNPACKED ? 'too much inside' : 'damaged';
  }
  if (length > MOST_UNPACKED) return 'too much inside';
  if (!ended) return 'damaged';
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

function lessonFrom(json: Uint8Array): Lesson | null {
  let parsed: unknown;
  try {
    parsed = JSON.parse(strFromU8(json));
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
