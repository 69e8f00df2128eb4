import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const TIMEOUT = 60_000;
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'contratiempo-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function cli(words: readonly string[], input = ''): { readonly code: number | null; readonly out: string; readonly err: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', ...words], {
    input,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  return { code: status, out: stdout, err: stderr };
}

describe('the program on this machine', () => {
  it('reads a chart from a file or standard input and prints the whole score', { timeout: TIMEOUT }, () => {
    const chart = `[A]\n${'| Em7 | A7 | D6 | B7b9 |\n'.repeat(50)}`;
    const path = join(folder, 'ferry.txt');
    writeFileSync(path, chart);
    const fromFile = cli(['arrange', path, '--format', 'json']);
    expect([fromFile.code, fromFile.err]).toEqual([0, '']);
    expect(JSON.parse(fromFile.out).bars).toHaveLength(200);
    expect(cli(['arrange', '-', '--format', 'json'], chart).out).toBe(fromFile.out);
  });

  it('writes the file it was asked for, and says why it cannot', { timeout: TIMEOUT }, () => {
    const path = join(folder, 'out.mid');
    expect(cli(['export', '-', '--format', 'midi', '--out', path], '| Em7 | A7 |\n')).toEqual({ code: 0, out: '', err: '' });
    expect(readFileSync(path).subarray(0, 4).toString('latin1')).toBe('MThd');
    const refused = cli(['export', '-', '--format', 'midi', '--out', join(folder, 'none', 'out.mid')], '| Em7 | A7 |\n');
    expect([refused.code, refused.out]).toEqual([2, '']);
    expect(refused.err).toMatch(/^cannot write .*: no such file or folder\n$/);
  });

  it('exits 1 on a faulty chart and 2 on bad use', { timeout: TIMEOUT }, () => {
    const faulty = cli(['check', '-'], '| h7 |\n');
    expect([faulty.code, JSON.parse(faulty.out)[0].text]).toEqual([1, 'h7']);
    const bad = cli(['arrange', folder]);
    expect([bad.code, bad.out]).toEqual([2, '']);
    expect(bad.err).toMatch(/it is a folder\n$/);
  });
});
