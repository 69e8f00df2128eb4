import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writePieces } from '../../src/cli/write-pieces';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pieces-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('a file written piece by piece', () => {
  it('holds all pieces in order', async () => {
    const path = join(folder, 'out.bin');
    await writePieces(path, [Uint8Array.of(1, 2), Uint8Array.of(3)]);
    expect([...readFileSync(path)]).toEqual([1, 2, 3]);
  });

  it('that breaks off half-way leaves what was there before and nothing beside it', async () => {
    const path = join(folder, 'out.bin');
    writeFileSync(path, 'before');
    const breaking = (function* () {
      yield new Uint8Array(10_000);
      throw new Error('stopped');
    })();
    await expect(writePieces(path, breaking)).rejects.toThrow('stopped');
    expect(readFileSync(path, 'utf8')).toBe('before');
    expect(readdirSync(folder)).toEqual(['out.bin']);
  });

  it.runIf(existsSync('/dev/full'))('on a full disk says so', async () => {
    await expect(writePieces('/dev/full', [new Uint8Array(10)])).rejects.toMatchObject({ code: 'ENOSPC' });
  });
});
