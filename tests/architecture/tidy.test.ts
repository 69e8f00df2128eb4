import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { filesUnder } from './source-files';

const SOURCES = filesUnder('src', /\.tsx?$/).map((file) => `src/${file}`);
const STYLES = filesUnder('src', /\.css$/).map((file) => `src/${file}`);
const TESTS = filesUnder('tests', /\.(ts|tsx|grit)$/).map((file) => `tests/${file}`);
const DOCUMENTS = ['README.md', 'DEVELOPERS.md', 'package.json', 'package-lock.json', 'vite.config.ts', 'index.html', '.npmrc', '.ci/run'];
const read = (path: string) => readFileSync(path, 'utf8');
const lineCount = (text: string) => text.split('\n').length - 1;

/** Files are 40–150 lines as a rule; longer than this needs its reason on line 1. */
const LONG = 250;
const REASON = /^(\/\/|\/\*\*?) long because .{10,}/;
const COMPONENT = 120;
/** Names that say nothing about what is inside. */
const EMPTY_NAMES = /(^|\/)(utils?|helpers?|common|misc|types|index|shared|lib)(\.tsx?$|\/)/;

describe('the files', () => {
  it(`begin with their reason when they are longer than ${LONG} lines`, () => {
    const long = [...SOURCES, ...TESTS].filter((path) => lineCount(read(path)) > LONG && !REASON.test(read(path)));
    expect(long.map((path) => `${path} has ${lineCount(read(path))} lines: split it, or begin line 1 with "// long because …"`)).toEqual(
      [],
    );
  });

  it('give a class its own look in one stylesheet only: all that were fetched are in force on every place', () => {
    const homes = new Map<string, Set<string>>();
    for (const path of STYLES)
      for (const [, name = ''] of read(path).matchAll(/^\.([a-z][\w-]*) \{/gm)) homes.set(name, (homes.get(name) ?? new Set()).add(path));
    expect([...homes].filter(([, paths]) => paths.size > 1).map(([name, paths]) => `.${name}: ${[...paths].join(', ')}`)).toEqual([]);
  });

  it(`hold components of at most ${COMPONENT} lines`, () => {
    expect(SOURCES.filter((path) => path.endsWith('.tsx') && lineCount(read(path)) > COMPONENT && !REASON.test(read(path)))).toEqual([]);
  });

  it('have names that say what is inside', () => {
    expect([...SOURCES, ...TESTS].filter((path) => EMPTY_NAMES.test(path))).toEqual([]);
    expect(['src/music/utils.ts', 'src/ui/common/Button.tsx', 'src/ui/index.ts'].every((path) => EMPTY_NAMES.test(path))).toBe(true);
  });

  it('switch off no check of the linter or the compiler without a reason on the same line', () => {
    const silenced = [...SOURCES, ...TESTS].flatMap((path) =>
      read(path)
        .split('\n')
        .filter(
          (line) =>
            /(biome-ignore|@ts-(ignore|expect-error|nocheck))(?! \S+: .{10,}|: .{10,})/.test(line) && !path.endsWith('tidy.test.ts'),
        )
        .map((line) => `${path}: ${line.trim()}`),
    );
    expect(silenced).toEqual([]);
  });

  it('document every export with a comment', () => {
    const bare = SOURCES.flatMap((path) => undocumentedExports(read(path)).map((name) => `${path}: ${name}`));
    expect(bare).toEqual([]);
  });
});

/** Names of exports that have no doc comment directly before them; type aliases in a run share the comment of the first. */
function undocumentedExports(text: string): string[] {
  const lines = text.split('\n');
  return lines.flatMap((line, index) => {
    const name = /^export (?:declare )?(?:async )?(?:abstract )?(?:const|let|function\*?|class|interface|type|enum) (\w+)/.exec(line)?.[1];
    if (!name) return [];
    let before = index - 1;
    while (before >= 0 && /^export (const|type|let) \w+.*;$/.test(lines[before] ?? '')) before -= 1;
    const previous = (lines[before] ?? '').trim();
    const documented = previous.endsWith('*/') || (before < index - 1 && previous.startsWith('*'));
    return documented ? [] : [name];
  });
}

describe('what the project says', () => {
  // Built from pieces, so that this file does not contain what it forbids.
  const FORBIDDEN: readonly (readonly [string, RegExp])[] = [
    ['a folder of one machine', new RegExp(`(^|[\\s"'\`(=])/(${['work', 'home', 'Users', 'root'].join('|')})/`, 'm')],
    ['a path out of the project', new RegExp(`\\.\\./${'shared'}\\b`)],
    [
      'a registry host',
      new RegExp(
        ['registry', 'mirror', 'proxy']
          .map((host) => `${host}\\.[\\w-]+\\.(org|com|net|io)`)
          .concat(`${'npm'}js\\.(org|com)`, `deb\\.${'debian'}`, `${'arti'}factory`, `${'verd'}accio`)
          .join('|'),
        'i',
      ),
    ],
    ['where the job was learned', new RegExp(`\\b(${'seed'} document|${'trans'}cript of|interview ${'notes'})\\b`, 'i')],
  ];

  it.each(FORBIDDEN)('names nowhere %s', (_, pattern) => {
    expect([...SOURCES, ...STYLES, ...TESTS, ...DOCUMENTS].filter((path) => pattern.test(read(path)))).toEqual([]);
  });

  it('keeps addresses of downloads out of the lockfile, and pins every version exactly', () => {
    const { packages } = JSON.parse(read('package-lock.json')) as { packages: Record<string, { resolved?: string }> };
    expect(Object.entries(packages).filter(([, { resolved }]) => resolved !== undefined)).toEqual([]);
    const { dependencies, devDependencies } = JSON.parse(read('package.json')) as Record<string, Record<string, string>>;
    expect(Object.entries({ ...dependencies, ...devDependencies }).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
  });

  it('builds no markup from text', () => {
    const pattern = /\b(innerHTML|outerHTML|insertAdjacentHTML|dangerouslySetInnerHTML|document\.write)\b/;
    expect(SOURCES.filter((path) => pattern.test(read(path)))).toEqual([]);
  });

  it('loads nothing from another origin: the page names no address but its own', () => {
    const outside = /(?:src|href|url\()\s*[=(]?\s*["']?(?:https?:)?\/\/(?!www\.w3\.org)/;
    expect([...STYLES, 'index.html'].filter((path) => outside.test(read(path)))).toEqual([]);
  });
});
