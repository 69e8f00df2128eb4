import { open, rename, rm, stat } from 'node:fs/promises';

/**
 * Writes a file piece by piece: beside its place first, then moved there, so that a full disk or a program that is stopped never
 * leaves half a file under the name. A place that is no plain file (a pipe, a device) is written to as it is. Throws what the disk says.
 */
export async function writePieces(path: string, pieces: Iterable<Uint8Array> | AsyncIterable<Uint8Array>): Promise<void> {
  const there = await stat(path).catch(() => null);
  const aside = there === null || there.isFile();
  const target = aside ? `${path}.${process.pid}.part` : path;
  const file = await open(target, 'w');
  try {
    for await (const piece of pieces) await file.writeFile(piece);
    await file.close();
    if (aside) await rename(target, path);
  } catch (error) {
    await file.close().catch(() => undefined);
    if (aside) await rm(target, { force: true });
    throw error;
  }
}
