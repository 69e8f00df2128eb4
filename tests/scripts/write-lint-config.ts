/**
 * Writes `.biome.json`: formatter, lint rules, and the import zones of tests/architecture/zones.ts as lint errors.
 * Run `npx tsx tests/scripts/write-lint-config.ts` after changing that table; a test fails while the two differ.
 */
import { writeFileSync } from 'node:fs';
import { advice, MUSIC, permission, ZONES, type Zone } from '../architecture/zones';

const FOLDERS = [
  ...MUSIC,
  'performance',
  'practice',
  'words',
  'layout',
  'exchange',
  'audio',
  'input',
  'device/worklets',
  'device/workers',
  'device',
  'state',
  'ui',
  'cli',
];
const FILES = ['vocabulary', 'music/score', 'main'];

/** A zone's last name is what a relative import ends in: `../../chord/read` for music/chord from another part of music. */
const last = (name: string) => name.slice(name.lastIndexOf('/') + 1);

function refused(zone: Zone): string[] {
  const folders = FOLDERS.filter((name) => permission(zone, name) === 'no' && name !== zone.name);
  const files = FILES.filter((name) => permission(zone, name) === 'no' && name !== zone.name);
  const ports = zone.typesOnly.filter((name) => name.startsWith('state/')).map((name) => `!../**/${name}`);
  return [
    ...folders.map((name) => `../**/${last(name)}/**`),
    ...files.flatMap((name) => (name === 'music/score' ? ['../**/score', '../**/score-*'] : [`../**/${last(name)}`])),
    '../**/tests/**',
    ...ports,
  ];
}

function includes({ name }: Zone): string[] {
  if (name === 'music/score') return ['src/music/*.ts'];
  return ['vocabulary', 'main'].includes(name) ? [`src/${name}.ts`, `src/${name}.tsx`] : [`src/${name}/**`];
}

function override(zone: Zone) {
  const message = advice(zone);
  const isFile = ['vocabulary', 'music/score', 'main'].includes(zone.name);
  const packages = zone.packages.includes('*')
    ? []
    : [{ group: ['**', '!./**', '!../**', ...zone.packages.map((name) => `!${name.replace(/\/\*$/, '/**')}`)], message }];
  // A file of its own sits beside the folders, so that its own imports begin with `./`.
  const group = isFile ? refused(zone).flatMap((pattern) => [pattern, pattern.replace('../**/', './**/')]) : refused(zone);
  return {
    includes: includes(zone),
    linter: { rules: { style: { noRestrictedImports: { level: 'error', options: { patterns: [{ group, message }, ...packages] } } } } },
  };
}

/** The whole configuration, as an object ready for JSON. */
export function lintConfig() {
  // Later rows win where two match, so a folder inside another comes after it.
  const zones = [...ZONES].sort((a, b) => a.name.split('/').length - b.name.split('/').length);
  return {
    $schema: './node_modules/@biomejs/biome/configuration_schema.json',
    root: true,
    vcs: { enabled: true, clientKind: 'git', useIgnoreFile: true },
    files: { includes: ['**', '!package-lock.json', '!public', '!**/*.md'] },
    formatter: { indentStyle: 'space', indentWidth: 2, lineWidth: 140 },
    javascript: { formatter: { quoteStyle: 'single', jsxQuoteStyle: 'double', trailingCommas: 'all', semicolons: 'always' } },
    linter: {
      rules: {
        preset: 'recommended',
        suspicious: {
          noExplicitAny: 'error',
          noConsole: 'error',
          noFocusedTests: 'error',
          noSkippedTests: 'error',
          noImportCycles: { level: 'error', options: { ignoreTypes: false } },
        },
        security: { noDangerouslySetInnerHtml: 'error' },
        performance: { noBarrelFile: 'error', noReExportAll: 'error' },
        correctness: { noUnusedImports: 'error', noUnusedVariables: 'error' },
        style: {
          noDefaultExport: 'error',
          // Rules of a stylesheet are ordered by what they draw, not by weight.
          noDescendingSpecificity: 'off',
          noNonNullAssertion: 'off',
          useImportType: 'error',
          useFilenamingConvention: { level: 'error', options: { filenameCases: ['kebab-case'], strictCase: true } },
        },
      },
    },
    plugins: [
      { path: './tests/architecture/no-html-strings.grit', includes: ['src/**'] },
      { path: './tests/architecture/types-only-in-ui.grit', includes: ['src/ui/**'] },
      { path: './tests/architecture/types-only-ports.grit', includes: ['src/audio/**', 'src/input/**', 'src/device/**'] },
    ],
    overrides: [
      ...zones.map(override),
      {
        includes: ['src/ui/**/*.tsx', 'tests/ui/**/*.tsx'],
        linter: {
          rules: {
            style: {
              useFilenamingConvention: { level: 'error', options: { filenameCases: ['PascalCase', 'kebab-case'], strictCase: false } },
            },
          },
        },
      },
      { includes: ['src/cli/**', 'tests/**'], linter: { rules: { suspicious: { noConsole: 'off' } } } },
      {
        includes: ['vite.config.ts', 'tests/*/playwright.config.ts', 'tests/engines/quiet-sink.ts'],
        linter: { rules: { style: { noDefaultExport: 'off' } } },
      },
    ],
  };
}

if (process.argv[1]?.endsWith('write-lint-config.ts')) {
  writeFileSync('.biome.json', `${JSON.stringify(lintConfig(), null, 2)}\n`);
}
