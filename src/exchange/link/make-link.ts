import { deflateSync, strToU8 } from 'fflate';
import { failed, ok, type Result } from '../../vocabulary';
import { toBase64Url } from './base64url';
import { checksum } from './checksum';
import { type Lesson, LINK_MARK, LINK_VERSION, type LinkFault, LONGEST_LINK, LONGEST_NOTE, MOST_UNPACKED } from './lesson';

/**
 * The lesson as the part of an address behind the page's own: `#l=1.` and base64url of a checksum (four bytes, the lowest first) and the
 * deflated JSON `[text, settings, note]`. A lesson that does not fit is a fault that says by how much.
 */
export function makeLink({ text, settings, note }: Lesson): Result<string, LinkFault> {
  const json = strToU8(JSON.stringify([text, settings, note.slice(0, LONGEST_NOTE)]));
  if (json.length > MOST_UNPACKED) return failed({ code: 'too much inside', found: json.length });
  const packed = deflateSync(json, { level: 9 });
  const bytes = new Uint8Array(packed.length + 4);
  new DataView(bytes.buffer).setUint32(0, checksum(json), true);
  bytes.set(packed, 4);
  const link = `${LINK_MARK}${LINK_VERSION}.${toBase64Url(bytes)}`;
  return link.length > LONGEST_LINK ? failed({ code: 'too long', found: link.length }) : ok(link);
}
