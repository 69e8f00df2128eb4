import { readFileSync, writeFileSync } from 'node:fs';
import { failed, ok } from '../vocabulary';
import type { World } from './outcome';
import { run } from './run';

/** The real files and standard input of the machine it runs on. */
const world: World = {
  readText(path) {
    const bytes = world.readBytes(path);
    return bytes.ok ? ok(new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes.value)) : bytes;
  },
  readBytes(path) {
    try {
      return ok(readFileSync(path === '-' ? 0 : path));
    } catch (error) {
      return failed(`cannot read ${path === '-' ? 'standard input' : path}: ${reasonOf(error)}`);
    }
  },
  writeBytes(path, bytes) {
    try {
      writeFileSync(path, bytes);
      return ok(null);
    } catch (error) {
      return failed(`cannot write ${path}: ${reasonOf(error)}`);
    }
  },
  today: () => new Date().toISOString().slice(0, 10),
};

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file or folder',
  EISDIR: 'it is a folder',
  EACCES: 'no permission',
  ENOTDIR: 'part of the path is no folder',
  ENOSPC: 'the disk is full',
};

function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}

/** Exit code when the program itself is at fault, kept apart from those of faulty charts and bad use. */
const OUR_MISTAKE = 70;

// A reader that closes the pipe early (head, less) is no mistake.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});
try {
  const { code, out, err } = run(process.argv.slice(2), world);
  process.stderr.write(err);
  process.stdout.write(out);
  process.exitCode = code;
} catch (error) {
  process.stderr.write(`a mistake of the program: ${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = OUR_MISTAKE;
}
