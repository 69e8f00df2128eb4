/**
 * Measures the JavaScript of the first screen as a browser fetches it: the scripts and preloads named in dist/index.html and
 * everything they import statically, each gzipped. Exits 1 above the limit.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { gzipSync } from 'node:zlib';

/** Limit for the first screen's JavaScript, gzipped. */
const LIMIT_BYTES = 150 * 1024;
const STATIC_IMPORT = /(?:^|[;\s}])(?:import|export)\s*(?:[\w$*{}\s,]+\s*from\s*)?["'](\.{1,2}\/[^"']+\.js)["']/g;

/** Paths below `dist` of the scripts that the first screen loads. */
export function firstScreenScripts(dist: string): string[] {
  const html = readFileSync(join(dist, 'index.html'), 'utf8');
  const waiting = [...html.matchAll(/(?:src|href)="([^"]+\.js)"/g)].map((match) => normalize(match[1] ?? ''));
  const seen = new Set<string>();
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (seen.has(path)) continue;
    seen.add(path);
    const code = readFileSync(join(dist, path), 'utf8');
    for (const match of code.matchAll(STATIC_IMPORT)) waiting.push(normalize(join(dirname(path), match[1] ?? '')));
  }
  return [...seen].sort();
}

/** Bytes of a file after gzip at the usual level. */
export const gzippedBytes = (path: string) => gzipSync(readFileSync(path)).length;

function main(dist: string) {
  if (!existsSync(join(dist, 'index.html'))) throw new Error(`no ${dist}/index.html: run npm run build first`);
  const sizes = firstScreenScripts(dist).map((path) => ({ path, bytes: gzippedBytes(join(dist, path)) }));
  const total = sizes.reduce((sum, { bytes }) => sum + bytes, 0);
  for (const { path, bytes } of sizes) console.log(`${(bytes / 1024).toFixed(1).padStart(7)} KB  ${path}`);
  console.log(`${(total / 1024).toFixed(1).padStart(7)} KB  of ${LIMIT_BYTES / 1024} KB allowed on the first screen (gzip)`);
  if (sizes.length === 0 || total > LIMIT_BYTES) process.exitCode = 1;
}

if (process.argv[1]?.endsWith('check-size.ts')) main(process.argv[2] ?? 'dist');
