const SIGNS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Bytes as base64url without padding (RFC 4648, section 5). */
export function toBase64Url(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const group = ((bytes[at] ?? 0) << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    const signs = Math.min(4, bytes.length - at + 1);
    for (let sign = 0; sign < signs; sign += 1) text += SIGNS[(group >> (18 - 6 * sign)) & 63];
  }
  return text;
}

/** The bytes of base64url text, or null when a sign is none of its own or the length cannot be. */
export function fromBase64Url(text: string): Uint8Array | null {
  if (text.length % 4 === 1 || !/^[\w-]*$/.test(text)) return null;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  for (let at = 0, byte = 0; at < text.length; at += 4) {
    let group = 0;
    for (let sign = 0; sign < 4; sign += 1) group = (group << 6) | Math.max(0, SIGNS.indexOf(text[at + sign] ?? 'A'));
    for (let shift = 16; shift >= 0 && byte < bytes.length; shift -= 8, byte += 1) bytes[byte] = (group >> shift) & 255;
  }
  return bytes;
}
