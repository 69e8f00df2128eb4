import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import { failed, ok, type Result } from '../../vocabulary';
import { fromBase64Url, toBase64Url } from './base64url';
import { checksum } from './checksum';
import { type LinkFault, LONGEST_LINK, MOST_UNPACKED } from './lesson';

/*
 * What every link of ours is: its mark, a version, a point, and base64url of a checksum (four bytes, the lowest first) and the deflated
 * text. Links are hostile input: every size is capped before anything is made of it, and nothing is thrown.
 */

/** Packed bytes that are unpacked at a time: deflate makes at most 1032 bytes of one, so that no step can fill the memory. */
const STEP = 32;

/** A text as the part of an address behind the page's own: `pack('#l=', 1, '[]')` begins with `#l=1.`. One that does not fit is a fault that says by how much. */
export function pack(mark: string, version: number, text: string): Result<string, LinkFault> {
  const plain = strToU8(text);
  if (plain.length > MOST_UNPACKED) return failed({ code: 'too much inside', found: plain.length });
  const packed = deflateSync(plain, { level: 9 });
  const bytes = new Uint8Array(packed.length + 4);
  new DataView(bytes.buffer).setUint32(0, checksum(plain), true);
  bytes.set(packed, 4);
  const link = `${mark}${version}.${toBase64Url(bytes)}`;
  return link.length > LONGEST_LINK ? failed({ code: 'too long', found: link.length }) : ok(link);
}

/** The text of the part of an address behind `#`, made by `pack` with this mark and version. */
export function unpack(mark: string, version: number, hash: string): Result<string, LinkFault> {
  if (!hash.startsWith(mark)) return failed({ code: 'no link', found: 0 });
  if (hash.length > LONGEST_LINK) return failed({ code: 'too long', found: hash.length });
  const [, digits = '', payload = ''] = /^(\d{1,4})\.(.*)$/.exec(hash.slice(mark.length)) ?? [];
  if (digits === '') return failed({ code: 'damaged', found: 0 });
  if (Number(digits) > version) return failed({ code: 'newer version', found: Number(digits) });
  const bytes = fromBase64Url(payload);
  if (!bytes || bytes.length < 5 || Number(digits) !== version) return failed({ code: 'damaged', found: 0 });
  const plain = unpacked(bytes.subarray(4));
  if (typeof plain === 'string') return failed({ code: plain, found: MOST_UNPACKED });
  if (checksum(plain) !== new DataView(bytes.buffer, bytes.byteOffset).getUint32(0, true)) return failed({ code: 'damaged', found: 0 });
  return ok(strFromU8(plain));
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
