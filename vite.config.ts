import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { type Plugin, transformWithOxc } from 'vite';
import { defineConfig } from 'vitest/config';

/** What the page may do: load its own files and nothing else. Images may also be data or blob addresses made by the page itself. */
const PAGE_POLICY = ["default-src 'self'", "img-src 'self' data: blob:", "object-src 'none'", "base-uri 'none'", "form-action 'none'"].join(
  '; ',
);

/** Headers that a host adds; `frame-ancestors` counts in a header only. They stand in the README too. */
const HEADERS = {
  'Content-Security-Policy': `${PAGE_POLICY}; frame-ancestors 'none'`,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy': 'camera=(), geolocation=(), microphone=(self), midi=(self)',
};

/** Puts the policy into the built page, so that it holds on a host without headers. The development server needs scripts and styles in the page. */
function pagePolicy(): Plugin {
  return {
    name: 'page-policy',
    apply: 'build',
    transformIndexHtml: (html) =>
      html.replace('<meta charset="utf-8" />', `$&\n    <meta http-equiv="Content-Security-Policy" content="${PAGE_POLICY}" />`),
  };
}

/** Files of public/ that the page does without when there is no connection. */
const NOT_OFFLINE = ['practise.png'];

/** Every file below a folder, as addresses relative to it. */
const filesBelow = (folder: string, below = ''): string[] =>
  readdirSync(join(folder, below), { withFileTypes: true }).flatMap((entry) => {
    const name = below === '' ? entry.name : `${below}/${entry.name}`;
    return entry.isDirectory() ? filesBelow(folder, name) : [name];
  });

/**
 * Puts service-worker.js beside the page: the list of all files, a version made of their contents, and src/device/workers/service-worker.ts.
 * `OFFLINE=off npm run build` puts the worker there that ends it.
 */
function serviceWorker(): Plugin {
  return {
    name: 'service-worker',
    apply: 'build',
    enforce: 'post',
    async generateBundle(_, bundle) {
      const off = process.env.OFFLINE === 'off';
      const source = `src/device/workers/${off ? 'switch-off' : 'service-worker'}.ts`;
      const { code } = await transformWithOxc(readFileSync(source, 'utf8'), source, { sourcemap: false });
      const contents = createHash('sha256').update(code);
      const built = Object.values(bundle).filter(({ fileName }) => !fileName.endsWith('.map'));
      for (const file of built) contents.update(file.fileName).update(file.type === 'chunk' ? file.code : file.source);
      const copied = filesBelow('public').filter((name) => !NOT_OFFLINE.includes(name));
      for (const name of copied) contents.update(name).update(readFileSync(join('public', name)));
      const names = [...built.map(({ fileName }) => fileName), ...copied].map((name) => (name === 'index.html' ? './' : name));
      const head = `const PAGE_VERSION = '${contents.digest('hex').slice(0, 16)}';\nconst PAGE_FILES = ${JSON.stringify(names.sort())};\n`;
      this.emitFile({ type: 'asset', fileName: 'service-worker.js', source: off ? code : head + code });
    },
  };
}

export default defineConfig({
  // Relative addresses, so that dist/ works under any path of any static server.
  base: './',
  plugins: [react(), pagePolicy(), serviceWorker()],
  build: {
    target: 'es2022',
    sourcemap: true,
    // Browsers without module preloading fetch the same files a little later; a polyfill would weigh on everyone's first screen.
    // Nor is a link element made for what a fetched part needs in turn: those links held up the first screen more than they helped (decision 31).
    modulePreload: { polyfill: false, resolveDependencies: () => [] },
    // The first screen is one file: split along what fetched parts share it weighs 2 to 3 KB more, gzipped.
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } } },
  },
  // Threads fetch a language when they are to speak it.
  worker: { format: 'es' },
  preview: { headers: HEADERS },
  test: {
    // Property tests run long on a busy two-core machine; a test that hangs still ends.
    testTimeout: 60_000,
    // One worker a processor: the default leaves one free for watching.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/ui/**'],
          // Nothing here changes what another file sees: a process a file costs as much as all the tests.
          isolate: false,
        },
      },
      {
        extends: true,
        // Globals let the testing library clean up after each test by itself.
        test: { name: 'ui', environment: 'happy-dom', globals: true, include: ['tests/ui/**/*.test.{ts,tsx}'] },
      },
    ],
  },
});
