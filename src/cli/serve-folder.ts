import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.otf': 'font/otf',
  '.json': 'application/json',
  '.mp3': 'audio/mpeg',
};

/** Serves the files of a folder to this machine alone, on a free port, until closed. */
export async function serveFolder(folder: string): Promise<{ readonly address: string; readonly close: () => void }> {
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://local').pathname));
    readFile(join(folder, path === '/' ? 'index.html' : path)).then(
      (bytes) =>
        response.writeHead(200, { 'Content-Type': TYPES[extname(path === '/' ? '.html' : path)] ?? 'text/html; charset=utf-8' }).end(bytes),
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const at = server.address();
  if (at === null || typeof at === 'string') throw new Error('no free port on this machine');
  return {
    address: `http://127.0.0.1:${at.port}/`,
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}
