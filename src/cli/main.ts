import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { failed, ok } from '../vocabulary';
import type { World } from './outcome';
import { run } from './run';
import { writePieces } from './write-pieces';

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
  makeFolder(path) {
    try {
      mkdirSync(path, { recursive: true });
      return ok(null);
    } catch (error) {
      return failed(`cannot make the folder ${path}: ${reasonOf(error)}`);
    }
  },
  writePieces: async (path, pieces) => {
    try {
      await writePieces(path, pieces);
      return ok(null);
    } catch (error) {
      return failed(`cannot write ${path}: ${reasonOf(error)}`);
    }
  },
  sounds: async () => (await import('./sounds')).loadSounds(),
  sheetPrinter: async () => (await import('./sheet-printer')).openSheetPrinter(process.env.CONTRATIEMPO_PAGE),
};

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file or folder',
  EISDIR: 'it is a folder',
  EACCES: 'no permission',
  ENOTDIR: 'part of the path is no folder',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk is for reading only',
  EEXIST: 'a file is in its place',
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
  const outcome = run(process.argv.slice(2), world);
  const { code, out, err } = (await outcome.rest?.()) ?? outcome;
  process.stderr.write(err);
  process.stdout.write(out);
  process.exitCode = code;
} catch (error) {
  process.stderr.write(`a mistake of the program: ${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = OUR_MISTAKE;
}
