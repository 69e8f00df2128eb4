import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { firstScreenScripts, gzippedBytes } from './check-size';
import { findBrowser } from './find-browser';
import { freePort } from './free-port';
import { licenceList, runtimePackages } from './write-licences';

describe('the licence list', () => {
  it('is the one that the installed packages give', () => {
    expect(readFileSync('public/licences.txt', 'utf8')).toBe(licenceList());
  });

  it('names what the page is built from, dependencies of dependencies included, and no tool', () => {
    const locked = {
      '': { version: '1', dependencies: { a: '1' }, devDependencies: { tool: '1' } },
      'node_modules/a': { version: '1', dependencies: { b: '1' } },
      'node_modules/b': { version: '1', dependencies: { a: '1' } },
      'node_modules/tool': { version: '1' },
    };
    expect(runtimePackages(locked)).toEqual(['a', 'b']);
  });
});

describe('the size check', () => {
  let dist: string;
  beforeEach(() => {
    dist = mkdtempSync(join(tmpdir(), 'size-'));
    mkdirSync(join(dist, 'assets'));
  });
  afterEach(() => rmSync(dist, { recursive: true, force: true }));

  it('follows scripts, preloads and static imports from the page, and leaves out what is loaded on demand', () => {
    const page =
      '<script type="module" crossorigin src="./assets/main-1.js"></script><link rel="modulepreload" href="./assets/react-2.js">';
    writeFileSync(join(dist, 'index.html'), page);
    writeFileSync(
      join(dist, 'assets/main-1.js'),
      'import{a as b}from"./core-3.js";import"./side-4.js";const t=()=>import("./tone-5.js");b(t);',
    );
    writeFileSync(join(dist, 'assets/react-2.js'), 'export{x}from"./core-3.js";');
    for (const name of ['core-3', 'side-4', 'tone-5']) writeFileSync(join(dist, `assets/${name}.js`), 'export const a=1;');
    const scripts = firstScreenScripts(dist).map((path) => path.replace('\\', '/'));
    expect(scripts).toEqual(['assets/core-3.js', 'assets/main-1.js', 'assets/react-2.js', 'assets/side-4.js']);
    expect(gzippedBytes(join(dist, 'assets/core-3.js'))).toBeGreaterThan(17);
  });
});

describe('the search for a browser', () => {
  const before = process.env.CHROMIUM_PATH;
  afterEach(() => {
    if (before === undefined) delete process.env.CHROMIUM_PATH;
    else process.env.CHROMIUM_PATH = before;
  });

  it('takes the one that CHROMIUM_PATH names', () => {
    process.env.CHROMIUM_PATH = process.execPath;
    expect(findBrowser()).toBe(process.execPath);
  });

  it('says in one line when CHROMIUM_PATH names nothing that runs', () => {
    process.env.CHROMIUM_PATH = join(tmpdir(), 'no-such-browser');
    expect(() => findBrowser()).toThrow(/^CHROMIUM_PATH is .*no-such-browser, which cannot be run: point it at a Chromium or Chrome\.$/);
  });
});

describe('the search for a port', () => {
  it('gives the wanted port while it is free, and another one when it is taken', async () => {
    const port = await freePort();
    expect(await freePort(port)).toBe(port);
    const server = createServer();
    await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
    expect(await freePort(port)).not.toBe(port);
    await new Promise((resolve) => server.close(resolve));
  });
});
