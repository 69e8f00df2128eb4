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
  '@tonaljs/chord-type',
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
/** Errors by path below the folder; everything is linted in one run. */
let findings: ReadonlyMap<string, readonly Finding[]>;

function lintAll(): Map<string, Finding[]> {
  const { stdout } = spawnSync(resolve('node_modules/.bin/biome'), ['lint', '--reporter=json', '--max-diagnostics=none', 'src', 'tests'], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1 << 27,
  });
  const { diagnostics } = JSON.parse(stdout) as {
    diagnostics: { category: string; message: string; severity: string; location: { path: string; start: { line: number } } }[];
  };
  const byPath = new Map<string, Finding[]>();
  for (const { category, message, severity, location } of diagnostics) {
    if (severity !== 'error') continue;
    const path = location.path.replaceAll('\\', '/');
    byPath.set(path, [...(byPath.get(path) ?? []), { category, message, line: location.start.line }]);
  }
  return byPath;
}

const found = (path: string) => findings.get(path) ?? [];

function write(path: string, text: string) {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
}

const probeFile = (zone: Zone) => `src/${moduleIn(zone.name)}.ts`;

/** One rule of the house broken in a file of its own: what, where, how, and which rule must say so. */
const BROKEN: readonly (readonly [string, string, string, string])[] = [
  ['any', 'src/words/any.ts', 'export const x: any = 1;', 'lint/suspicious/noExplicitAny'],
  ['a default export', 'src/words/default.ts', 'export default 1;', 'lint/style/noDefaultExport'],
  ['a barrel', 'src/words/barrel.ts', "export * from './other';", 'lint/performance/noReExportAll'],
  ['a file name that is not kebab-case', 'src/words/someWords.ts', 'export const x = 1;', 'lint/style/useFilenamingConvention'],
  ['markup made of text', 'src/ui/markup.ts', "document.body.innerHTML = 'x';", 'plugin'],
  [
    'markup made of text in React',
    'src/ui/Markup.tsx',
    'export const P = () => <p dangerouslySetInnerHTML={{ __html: "x" }} />;',
    'lint/security/noDangerouslySetInnerHtml',
  ],
  [
    'a test that runs alone',
    'tests/words/alone.test.ts',
    "import { it } from 'vitest';\nit.only('works', () => {});",
    'lint/suspicious/noFocusedTests',
  ],
];

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'lint-zones-'));
  // Outside the work tree there is no git ignore file to read.
  const config = { ...lintConfig(), vcs: { enabled: false } };
  writeFileSync(join(folder, '.biome.json'), JSON.stringify(config));
  cpSync('tests/architecture', join(folder, 'tests/architecture'), { recursive: true, filter: (path) => !path.endsWith('.ts') });
  for (const zone of ZONES) {
    const lines = probesOf(zone).map(({ line }) => line);
    write(probeFile(zone), `${lines.join('\n')}\n`);
  }
  for (const [, path, text] of BROKEN) write(path, `${text}\n`);
  write('src/words/egg.ts', "import type { Hen } from './hen';\nexport type Egg = { hen: Hen };\n");
  write('src/words/hen.ts', "import type { Egg } from './egg';\nexport type Hen = { egg: Egg };\n");
  findings = lintAll();
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the lint configuration', () => {
  it('is the one that the zone table gives', () => {
    expect(JSON.parse(readFileSync('.biome.json', 'utf8'))).toEqual(JSON.parse(JSON.stringify(lintConfig())));
  });

  it.each(ZONES.map((zone) => [zone.name, zone] as const))(
    'refuses exactly what the table refuses in src/%s, and says what to do instead',
    (_, zone) => {
      const probes = probesOf(zone);
      const refusals = found(probeFile(zone)).filter(
        ({ category }) => category === 'lint/style/noRestrictedImports' || category === 'plugin',
      );
      const refusedLines = [...new Set(refusals.map(({ line }) => line))].sort((a, b) => a - b);
      expect(refusedLines.map((line) => probes[line - 1]?.line)).toEqual(probes.filter(({ refused }) => refused).map(({ line }) => line));
      for (const { category, message } of refusals) {
        if (category === 'plugin') expect(message).toMatch(/types alone .*: write 'import type', and /);
        else expect(message).toBe(advice(zone));
      }
    },
  );
});

describe('the other rules of the house', () => {
  it.each(BROKEN)('refuse %s', (_, path, _text, category) => {
    expect(found(path).map((finding) => finding.category)).toContain(category);
  });

  it('refuse a cycle of two files, even of types', () => {
    expect(found('src/words/hen.ts').map(({ category }) => category)).toContain('lint/suspicious/noImportCycles');
  });
});
