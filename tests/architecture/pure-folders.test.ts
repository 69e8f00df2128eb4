import { spawnSync } from 'node:child_process';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { filesUnder } from './source-files';
import { PURE_FOLDERS } from './zones';

/** Loads every module named in its arguments, with traps on what only a browser has; prints what failed, as JSON. */
const LOADER = `
for (const name of ['window', 'document', 'navigator', 'localStorage', 'indexedDB', 'AudioContext', 'requestAnimationFrame', 'HTMLElement']) {
  Object.defineProperty(globalThis, name, { configurable: true, get() { throw new Error('reads ' + name + ' while it loads'); } });
}
const failures = [];
for (const url of process.argv.slice(1)) {
  try { await import(url); } catch (error) { failures.push(url + ': ' + error.message); }
}
process.stdout.write(JSON.stringify({ loaded: process.argv.length - 1 - failures.length, failures }));
`;

function load(urls: readonly string[]): { loaded: number; failures: string[] } {
  const { stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', '--input-type=module', '--eval', LOADER, ...urls], {
    encoding: 'utf8',
    timeout: 60_000,
  });
  if (stdout === '') throw new Error(`the loader printed nothing: ${stderr}`);
  return JSON.parse(stdout);
}

describe('the pure folders', () => {
  it('load in bare Node, every file, without anything that only a browser has', () => {
    const files = [
      'vocabulary.ts',
      ...PURE_FOLDERS.flatMap((folder) => filesUnder(`src/${folder}`, /\.ts$/).map((file) => `${folder}/${file}`)),
    ];
    const { loaded, failures } = load(files.map((file) => pathToFileURL(`src/${file}`).href));
    expect(failures).toEqual([]);
    expect(loaded).toBe(files.length);
  }, 60_000);

  it('hold no file of React', () => {
    expect(PURE_FOLDERS.flatMap((folder) => filesUnder(`src/${folder}`, /\.(tsx|jsx|css)$/))).toEqual([]);
  });

  it('would be caught reading the screen: a module that does so fails to load', () => {
    const url = `data:text/javascript,${encodeURIComponent('export const width = window.innerWidth;')}`;
    expect(load([url]).failures).toEqual([expect.stringContaining('reads window while it loads')]);
  }, 60_000);
});
