import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lintConfig } from '../scripts/write-lint-config';
import { advice, mayUsePackage, permission, ZONES, type Zone } from './zones';

/** Zones that are one file rather than a folder. */
const SINGLE_FILES = ['vocabulary', 'music/score', 'main'];
const moduleIn = (zone: string) => (SINGLE_FILES.includes(zone) ? zone : `${zone}/probe`);
const MODULES = [...ZONES.map(({ name }) => moduleIn(name)), 'state/ports'];
const PACKAGES = [
  'react',
  'react-dom/client',
  'vexflow/core',
  'tone',
  'tonal',
  'zustand',
  'zustand/vanilla',
  'idb',
  'midi-file',
  'node:fs',
  '@some/unheard-of',
];

/** One import, alone on its line of the probe file of its zone. */
interface Probe {
  readonly line: string;
  readonly refused: boolean;
}

function probesOf(zone: Zone): Probe[] {
  const from = dirname(`src/${moduleIn(zone.name)}`);
  const specifier = (path: string) => (path.startsWith('.') ? path : `./${path}`);
  const modules = MODULES.filter((module) => module !== moduleIn(zone.name)).flatMap((module) => {
    const path = specifier(relative(from, `src/${module}`));
    const allowed = permission(zone, module);
    return [
      { line: `import { x } from '${path}';`, refused: allowed !== 'values' },
      { line: `import type { X } from '${path}';`, refused: allowed === 'no' },
    ];
  });
  const tests = { line: `import { x } from '${specifier(relative(from, 'tests/sweep/sweep'))}';`, refused: true };
  const packages = PACKAGES.map((name) => ({ line: `import { x } from '${name}';`, refused: !mayUsePackage(zone, name) }));
  return [...modules, tests, ...packages];
}

interface Finding {
  readonly category: string;
  readonly message: string;
  readonly line: number;
}

let folder: string;

function lint(path: string): Finding[] {
  const { stdout } = spawnSync(resolve('node_modules/.bin/biome'), ['lint', '--reporter=json', '--max-diagnostics=none', path], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1 << 27,
  });
  const { diagnostics } = JSON.parse(stdout) as {
    diagnostics: { category: string; message: string; severity: string; location: { start: { line: number } } }[];
  };
  return diagnostics
    .filter(({ severity }) => severity === 'error')
    .map(({ category, message, location }) => ({ category, message, line: location.start.line }));
}

function write(path: string, text: string): string {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
  return path;
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'lint-zones-'));
  // Outside the work tree there is no git ignore file to read.
  const config = { ...lintConfig(), vcs: { enabled: false } };
  writeFileSync(join(folder, '.biome.json'), JSON.stringify(config));
  cpSync('tests/architecture', join(folder, 'tests/architecture'), { recursive: true, filter: (path) => !path.endsWith('.ts') });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the lint configuration', () => {
  it('is the one that the zone table gives', () => {
    expect(JSON.parse(readFileSync('.biome.json', 'utf8'))).toEqual(JSON.parse(JSON.stringify(lintConfig())));
  });

  it.each(ZONES.map((zone) => [zone.name, zone] as const))(
    'refuses exactly what the table refuses in src/%s, and says what to do instead',
    (_, zone) => {
      const probes = probesOf(zone);
      const path = write(`src/${moduleIn(zone.name)}.ts`, `${probes.map(({ line }) => line).join('\n')}\n`);
      const findings = lint(path).filter(({ category }) => category === 'lint/style/noRestrictedImports' || category === 'plugin');
      const refusedLines = [...new Set(findings.map(({ line }) => line))].sort((a, b) => a - b);
      expect(refusedLines.map((line) => probes[line - 1]?.line)).toEqual(probes.filter(({ refused }) => refused).map(({ line }) => line));
      for (const { category, message } of findings) {
        if (category === 'plugin') expect(message).toMatch(/types alone .*: write 'import type', and /);
        else expect(message).toBe(advice(zone));
      }
    },
  );
});

describe('the other rules of the house', () => {
  it.each([
    ['any', 'src/words/probe.ts', 'export const x: any = 1;', 'lint/suspicious/noExplicitAny'],
    ['a default export', 'src/words/probe.ts', 'export default 1;', 'lint/style/noDefaultExport'],
    ['a barrel', 'src/words/probe.ts', "export * from './other';", 'lint/performance/noReExportAll'],
    ['a file name that is not kebab-case', 'src/words/someWords.ts', 'export const x = 1;', 'lint/style/useFilenamingConvention'],
    ['markup made of text', 'src/ui/probe.ts', "document.body.innerHTML = 'x';", 'plugin'],
    [
      'markup made of text in React',
      'src/ui/Probe.tsx',
      'export const P = () => <p dangerouslySetInnerHTML={{ __html: "x" }} />;',
      'lint/security/noDangerouslySetInnerHtml',
    ],
    [
      'a test that runs alone',
      'tests/words/probe.test.ts',
      "import { it } from 'vitest';\nit.only('works', () => {});",
      'lint/suspicious/noFocusedTests',
    ],
  ])('refuse %s', (_, path, text, category) => {
    expect(lint(write(path, `${text}\n`)).map((finding) => finding.category)).toContain(category);
  });

  it('refuse a cycle of two files, even of types', () => {
    write('src/words/egg.ts', "import type { Hen } from './hen';\nexport type Egg = { hen: Hen };\n");
    const path = write('src/words/hen.ts', "import type { Egg } from './egg';\nexport type Hen = { egg: Egg };\n");
    expect(lint(path).map(({ category }) => category)).toContain('lint/suspicious/noImportCycles');
  });
});
