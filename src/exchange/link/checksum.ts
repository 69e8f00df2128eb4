/** CRC-32 as gzip and PNG use it (ISO 3309, polynomial 0xEDB88320 reflected): `checksum` of the ASCII bytes of `123456789` is 0xCBF43926. */
export function checksum(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}
