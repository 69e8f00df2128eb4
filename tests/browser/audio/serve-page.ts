import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join, normalize } from 'node:path';
import type { Page } from '@playwright/test';
import { build } from 'vite';
import type { Bench } from './page/main';

declare global {
  interface Window {
    readonly bench: Bench;
  }
}

const TYPES: Readonly<Record<string, string>> = { '.html': 'text/html', '.js': 'text/javascript', '.mp3': 'audio/mpeg' };

/** The page under test, built as for production and served with a policy that allows our own files alone. */
export interface ServedPage {
  readonly address: string;
  close(): Promise<void>;
}

/** Builds tests/browser/audio/page with the project's samples beside it and serves it on a free port. */
export async function servePage(): Promise<ServedPage> {
  const folder = mkdtempSync(join(tmpdir(), 'sound-page-'));
  await build({
    root: join(import.meta.dirname, 'page'),
    configFile: false,
    base: './',
    logLevel: 'error',
    publicDir: join(import.meta.dirname, '../../../public'),
    build: { outDir: folder, emptyOutDir: true, target: 'es2022' },
  });
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://page').pathname));
    try {
      const bytes = readFileSync(join(folder, path === '/' ? 'index.html' : path));
      response.writeHead(200, {
        'content-type': TYPES[extname(path)] ?? (path === '/' ? 'text/html' : 'application/octet-stream'),
        'content-security-policy': "default-src 'self'; img-src 'self' data:; style-src 'self' 'unsafe-inline'",
      });
      response.end(bytes);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
      rmSync(folder, { recursive: true });
    },
  };
}

/** Opens the page and collects what the console says in error; failed fetches are the browser's own remark and are left out. */
export async function openPage(page: Page, address: string): Promise<string[]> {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' && !message.text().startsWith('Failed to load resource')) errors.push(message.text());
  });
  await page.goto(address);
  return errors;
}
