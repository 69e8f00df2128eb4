import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { filesUnder, importsOf, importsOfFile, resolveModule } from './source-files';
import { advice, mayUsePackage, permission, ZONES, type Zone, zoneOf } from './zones';

const FILES = filesUnder('src', /\.tsx?$/);
const moduleOf = (file: string) => file.replace(/\.tsx?$/, '');

/** Everything wrong with one import, in words; empty when it is allowed. */
function objection(file: string, zone: Zone, { specifier, typesOnly }: { specifier: string; typesOnly: boolean }): string[] {
  if (!specifier.startsWith('.'))
    return mayUsePackage(zone, specifier) ? [] : [`src/${file} imports the package ${specifier}. ${advice(zone)}`];
  const target = resolveModule(file, specifier);
  if (target.startsWith('..')) return [`src/${file} imports ${specifier}, outside src/. Nothing imports tests or configuration.`];
  const allowed = permission(zone, target);
  if (allowed === 'values' || (allowed === 'types' && typesOnly)) return [];
  const how = allowed === 'types' ? 'imports values from' : 'imports';
  return [`src/${file} ${how} ${target}. ${advice(zone)}`];
}

/** The first cycle found among modules, as a path that ends where it began, or null. */
function cycleIn(graph: ReadonlyMap<string, readonly string[]>): string[] | null {
  const done = new Set<string>();
  const visit = (module: string, path: readonly string[]): string[] | null => {
    if (path.includes(module)) return [...path.slice(path.indexOf(module)), module];
    if (done.has(module)) return null;
    for (const next of graph.get(module) ?? []) {
      const found = visit(next, [...path, module]);
      if (found) return found;
    }
    done.add(module);
    return null;
  };
  for (const module of graph.keys()) {
    const found = visit(module, []);
    if (found) return found;
  }
  return null;
}

describe('the import table', () => {
  it('places every source file in a zone', () => {
    expect(FILES.filter((file) => zoneOf(moduleOf(file)) === null)).toEqual([]);
  });

  it('holds for every import in src/', () => {
    const objections = FILES.flatMap((file) => {
      const zone = zoneOf(moduleOf(file));
      return zone ? importsOfFile(`src/${file}`).flatMap((statement) => objection(file, zone, statement)) : [];
    });
    expect(objections).toEqual([]);
  });

  it('leads to no cycle, types included', () => {
    const graph = new Map(
      FILES.map((file) => {
        const relative = importsOfFile(`src/${file}`).filter(({ specifier }) => specifier.startsWith('.'));
        return [moduleOf(file), relative.map(({ specifier }) => resolveModule(file, specifier))] as const;
      }),
    );
    expect(cycleIn(graph)).toBeNull();
  });

  it('names only zones that exist, once each, and never lets two zones import each other', () => {
    const names = ZONES.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const zone of ZONES) {
      for (const target of [...zone.mayImport, ...zone.typesOnly]) {
        expect(
          names.some((name) => name === target || name.startsWith(`${target}/`) || target.startsWith(`${name}/`)),
          target,
        ).toBe(true);
        const back = zoneOf(target);
        // A folder inside another zone belongs to it.
        const nested = back !== null && `${zone.name}/`.startsWith(`${back.name}/`);
        if (back && !nested && target !== 'music') expect(permission(back, zone.name), `${zone.name} and ${target}`).toBe('no');
      }
    }
  });
});

describe('the checker itself', () => {
  it('sees static, type-only, re-exported, side-effect, dynamic and worker imports, on one line or several', () => {
    const text = [
      "import a from './a';",
      "import type { B } from './b';",
      "import {\n  c,\n  type D,\n} from './c';",
      "export { e } from './e';",
      "export type * from './f';",
      "import './g.css';",
      "const h = () => import('./h');",
      "new Worker(new URL('./i.ts', import.meta.url));",
      "// import j from './j';",
      "/* import k from './k'; */",
    ].join('\n');
    expect(importsOf(text).map(({ specifier, typesOnly }) => `${specifier}${typesOnly ? ' types' : ''}`)).toEqual([
      './a',
      './b types',
      './c',
      './e',
      './f types',
      './g.css',
      './h',
      './i.ts',
    ]);
  });

  it('objects to a value where types alone are allowed, to a package and to a way out of src/', () => {
    const ui = zoneOf('ui/App');
    if (!ui) throw new Error('no zone for ui');
    const from = (specifier: string, typesOnly = false) => objection('ui/App.tsx', ui, { specifier, typesOnly }).length;
    expect([
      from('../music/score', true),
      from('../music/score'),
      from('tone'),
      from('react'),
      from('../../tests/x'),
      from('../state/ports'),
    ]).toEqual([0, 1, 1, 0, 1, 0]);
  });

  it('finds a cycle and says where', () => {
    expect(
      cycleIn(
        new Map([
          ['a', ['b']],
          ['b', ['c']],
          ['c', ['b']],
        ]),
      ),
    ).toEqual(['b', 'c', 'b']);
    expect(
      cycleIn(
        new Map([
          ['a', ['b', 'c']],
          ['b', ['c']],
        ]),
      ),
    ).toBeNull();
  });

  it('finds as many import keywords as the files have lines that begin with one', () => {
    const counted = FILES.map((file) => {
      const lines = readFileSync(`src/${file}`, 'utf8').match(/^import\b/gm)?.length ?? 0;
      return importsOfFile(`src/${file}`).length >= lines ? null : file;
    });
    expect(counted.filter(Boolean)).toEqual([]);
  });
});
