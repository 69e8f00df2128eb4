/** `npm start`: builds the page when dist/ is missing or older than its sources, serves it, and prints the address. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { build, preview } from 'vite';
import { freePort } from './free-port';

const SOURCES = ['src', 'public', 'index.html', 'vite.config.ts', 'package-lock.json'];
const BUILT = join('dist', 'index.html');

function newest(path: string): number {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
}

function isFresh(): boolean {
  if (!existsSync(BUILT)) return false;
  return SOURCES.filter((path) => existsSync(path)).every((path) => newest(path) <= statSync(BUILT).mtimeMs);
}

/** PORT, or 4173, or any free one when that is taken. */
async function port(): Promise<number> {
  const wanted = Number(process.env.PORT ?? 4173);
  if (!Number.isInteger(wanted) || wanted < 1 || wanted > 65_535)
    throw new Error(`PORT is ${process.env.PORT}; it must be a number from 1 to 65535.`);
  return freePort(wanted);
}

if (!isFresh()) {
  console.log('Building …');
  await build({ logLevel: 'warn' });
}
const server = await preview({ logLevel: 'silent', preview: { host: '127.0.0.1', port: await port(), strictPort: true } });
const at = server.httpServer.address();
if (at === null || typeof at === 'string') throw new Error('the server has no address');
console.log(`Contratiempo is ready at http://127.0.0.1:${at.port}/ – Ctrl+C stops it.`);
