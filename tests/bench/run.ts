/** `npm run bench`: the bench, bundled as the page is and run by Node. Run from its sources it would weigh what the loader adds to every function. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { build } from 'vite';

/** Two folders down, as the sources are: they find the samples and the built page from where they lie. */
const FOLDER = join('node_modules', '.bench');

await build({
  configFile: false,
  publicDir: false,
  logLevel: 'error',
  build: {
    ssr: 'tests/bench/bench.ts',
    outDir: FOLDER,
    emptyOutDir: true,
    target: 'node20',
    rolldownOptions: { output: { chunkFileNames: '[name]-[hash].js' } },
  },
});
const { status } = spawnSync(process.execPath, [join(FOLDER, 'bench.js'), ...process.argv.slice(2)], { stdio: 'inherit' });
process.exitCode = status ?? 1;
