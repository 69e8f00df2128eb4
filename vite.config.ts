import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

/** What the served page may load: its own files alone. Images may also be data or blob addresses made by the page itself. */
const CONTENT_SECURITY_POLICY = [
  "default-src 'self'",
  "img-src 'self' data: blob:",
  "style-src 'self' 'unsafe-inline'",
  "object-src 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

export default defineConfig({
  // Relative addresses, so that dist/ works under any path of any static server.
  base: './',
  plugins: [react()],
  build: {
    target: 'es2022',
    sourcemap: true,
    // Browsers without module preloading fetch the same files a little later; a polyfill would weigh on everyone's first screen.
    modulePreload: { polyfill: false },
    // The first screen is one file: split along what fetched parts share it weighs 2 to 3 KB more, gzipped.
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } } },
  },
  preview: { headers: { 'Content-Security-Policy': CONTENT_SECURITY_POLICY, 'X-Content-Type-Options': 'nosniff' } },
  test: {
    // Property tests run long on a busy two-core machine; a test that hangs still ends.
    testTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: { name: 'core', environment: 'node', include: ['tests/**/*.test.ts'], exclude: ['tests/ui/**'] },
      },
      {
        extends: true,
        // Globals let the testing library clean up after each test by itself.
        test: { name: 'ui', environment: 'happy-dom', globals: true, include: ['tests/ui/**/*.test.{ts,tsx}'] },
      },
    ],
  },
});
