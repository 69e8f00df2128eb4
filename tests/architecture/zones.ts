/**
 * Who may import whom, as data. `.biome.json` is written from this table (tests/scripts/write-lint-config.ts), and
 * imports.test.ts walks every import in src/ against it, so the two cannot drift apart.
 */

/** One zone of `src/`: the files it covers, and everything they may import. What is not listed is an error. */
export interface Zone {
  /** Path below `src/`, without extension for a single file: `music/pitch`, `vocabulary`. */
  readonly name: string;
  /** Zones it may import, values and types. `music` stands for every zone of music. */
  readonly mayImport: readonly string[];
  /** Zones or single modules of which it may import types alone. */
  readonly typesOnly: readonly string[];
  /** Packages it may import; a trailing `/*` admits what lies below. */
  readonly packages: readonly string[];
  /** What to do instead of the import that was refused. */
  readonly instead: string;
}

/** The folders of `src/music/`, in the order in which they build on each other, then the file that joins them. */
export const MUSIC = ['pitch', 'chord', 'clave', 'chart', 'harmony', 'montuno', 'bass', 'percussion', 'styles'].map(
  (name) => `music/${name}`,
);

/** Folders that run without a browser: no DOM types, no packages that need one. */
export const PURE_FOLDERS = ['music', 'performance', 'practice', 'words', 'layout', 'exchange'] as const;

const LOWER = 'Move what is shared down into a zone that both may import, or take it as an argument.';
const PORTS = 'Take a plain value or a port from state/ports as an argument; src/main.tsx joins the two.';

const zone = (
  name: string,
  mayImport: readonly string[],
  packages: readonly string[],
  instead: string,
  typesOnly: readonly string[] = [],
): Zone => ({
  name,
  mayImport,
  typesOnly,
  packages,
  instead,
});

/** The whole table. `vocabulary` may be imported by all and is not repeated in the rows. */
export const ZONES: readonly Zone[] = [
  zone('vocabulary', [], [], 'The vocabulary imports nothing: define the noun here, or keep it in the zone that needs it.'),
  zone('music/pitch', [], [], LOWER),
  zone('music/clave', [], [], LOWER),
  zone('music/chord', ['music/pitch'], ['@tonaljs/chord-type'], LOWER),
  zone('music/chart', ['music/pitch', 'music/chord'], [], LOWER),
  zone('music/harmony', ['music/pitch', 'music/chord', 'music/chart'], [], LOWER),
  zone('music/montuno', ['music/pitch', 'music/chord', 'music/clave', 'music/harmony'], [], LOWER),
  zone('music/bass', ['music/pitch', 'music/chord', 'music/clave', 'music/harmony'], [], LOWER),
  zone('music/percussion', ['music/clave', 'music/harmony'], [], LOWER),
  zone(
    'music/styles',
    ['music/montuno', 'music/bass', 'music/percussion', 'music/clave'],
    [],
    'A style is data: name the pattern, and let music/score look it up.',
  ),
  zone('music/score', ['music'], [], 'The score joins music alone: what follows it (performance, layout, words) takes the Score as input.'),
  zone('performance', ['music/score'], [], 'Read what you need from the Score; import its types from music/score.'),
  zone('practice', ['music', 'performance'], [], PORTS),
  zone('words', ['music', 'practice'], [], 'Words turn data into sentences: take the data as an argument.'),
  zone('layout', ['music', 'performance', 'words'], [], 'Layout gives numbers, no drawing: src/ui draws them.'),
  zone(
    'exchange',
    ['music', 'performance', 'practice', 'layout', 'words'],
    ['midi-file', 'fflate', 'client-zip', 'opentype.js/*', 'qrcode', 'saxes'],
    'Bytes or text in and out: saving is the FileSaver port, called by src/state.',
  ),
  zone('audio', ['performance'], ['tone', 'tone/*'], PORTS, ['state/ports', 'state/listening/ports']),
  zone('input', ['performance'], [], PORTS, ['state/ports', 'state/listening/ports']),
  zone('device/worklets', ['practice', 'device'], [], `${PORTS} A worklet is fed by messages.`),
  zone('device/workers', ['music', 'performance', 'exchange', 'practice', 'device'], [], PORTS, ['state/ports']),
  zone('device', ['performance'], ['idb'], `${PORTS} Code for a worker belongs in src/device/workers.`, [
    'state/ports',
    'state/take-along/ports',
  ]),
  zone(
    'state',
    ['music', 'performance', 'practice', 'layout', 'exchange', 'words'],
    ['zustand', 'zustand/*'],
    'State speaks to the world through the ports; src/main.tsx hands in the real ones.',
  ),
  zone(
    'ui',
    ['state', 'layout', 'words'],
    [
      'react',
      'react/*',
      'react-dom',
      'react-dom/*',
      'vexflow',
      'vexflow/*',
      'zustand',
      'zustand/*',
      '@fontsource-variable/*',
      '@vexflow-fonts/*',
    ],
    'Show what state and layout hold, and send commands to state: the work is done there, not in a component.',
    ['music', 'performance', 'practice'],
  ),
  zone(
    'cli',
    ['music', 'performance', 'exchange', 'words'],
    ['node:*', 'node:*/*', 'playwright-core'],
    'The command line runs the core without a browser; move shared code into the core.',
  ),
  zone(
    'main',
    ['music', 'performance', 'practice', 'words', 'layout', 'exchange', 'audio', 'input', 'device', 'state', 'ui'],
    ['*'],
    'main.tsx joins the parts of the page; the command line is another program.',
  ),
];

/** The zone of a module given by its path below `src/` without extension (`music/pitch/spell`), or null. */
export function zoneOf(module: string): Zone | null {
  const found = ZONES.find(({ name }) => module === name || module.startsWith(`${name}/`));
  // Files directly in music/ join its folders: they are the score's.
  return found ?? (/^music\/[^/]+$/.test(module) ? ZONES.find(({ name }) => name === 'music/score') : undefined) ?? null;
}

const covers = (list: readonly string[], module: string) => list.some((name) => module === name || module.startsWith(`${name}/`));

/** Says whether `zone` may import `module` (a path below `src/`): as values, as types alone, or not at all. */
export function permission(from: Zone, module: string): 'values' | 'types' | 'no' {
  if (module === 'vocabulary' || covers([from.name], module) || covers(from.mayImport, module)) return 'values';
  return covers(from.typesOnly, module) ? 'types' : 'no';
}

/** Says whether `zone` may import the package `name`, written as in the import. */
export function mayUsePackage(from: Zone, name: string): boolean {
  return from.packages.some((allowed) => allowed === name || (allowed.endsWith('*') && name.startsWith(allowed.slice(0, -1))));
}

/** One sentence for a refused import: what the zone may import, and what to do instead. */
export function advice(from: Zone): string {
  const values = ['vocabulary', ...from.mayImport].filter((name) => name !== from.name).join(', ');
  const types = from.typesOnly.length > 0 ? ` (types alone from ${from.typesOnly.join(', ')})` : '';
  const packages = from.packages.length > 0 ? ` and the packages ${from.packages.join(', ')}` : ' and no package';
  return `src/${from.name} may import ${from.name === 'vocabulary' ? 'nothing' : `${values}${types}${packages}`}. ${from.instead}`;
}
