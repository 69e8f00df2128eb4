import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative, sep } from 'node:path';

/** One import, re-export or `import()` of a module. */
export interface ImportStatement {
  /** As written: `../chord/chord`, `react`. */
  readonly specifier: string;
  /** True for `import type` and `export type`, which vanish when compiled. */
  readonly typesOnly: boolean;
}

/** Paths below `root` of all files under it whose name matches, with `/` between folders, sorted; none when there is no such folder. */
export function filesUnder(root: string, matches: RegExp): string[] {
  if (!existsSync(root)) return [];
  return readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && matches.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

const STATEMENT = /^\s*(import|export)\s+(type\s+)?(?:[\w$*{}\s,]+?\s+from\s+)?(['"])([^'"\n]+)\3/gm;
const DYNAMIC = /\bimport\(\s*(['"])([^'"\n]+)\1/g;
const WORKER = /new URL\(\s*(['"])(\.[^'"\n]+)\1\s*,\s*import\.meta\.url/g;

/** Every import in TypeScript text: static, re-exported, dynamic, and modules named by `new URL(…, import.meta.url)`. */
export function importsOf(text: string): ImportStatement[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
  const fixed = [...code.matchAll(STATEMENT)].map((match) => ({ specifier: match[4] ?? '', typesOnly: match[2] !== undefined }));
  const late = [...code.matchAll(DYNAMIC), ...code.matchAll(WORKER)].map((match) => ({ specifier: match[2] ?? '', typesOnly: false }));
  return [...fixed, ...late];
}

/** The imports of the file at `path`. */
export const importsOfFile = (path: string) => importsOf(readFileSync(path, 'utf8'));

/** The path below `src/` without extension that a relative import from `file` (a path below `src/`) means. */
export function resolveModule(file: string, specifier: string): string {
  const bare = specifier.replace(/\?.*$/, '').replace(/\.(ts|tsx|js)$/, '');
  return normalize(join(dirname(file), bare))
    .split(sep)
    .join('/');
}
