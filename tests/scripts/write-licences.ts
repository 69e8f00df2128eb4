/**
 * Writes public/licences.txt: the licence of every package that is part of the built page, with its full text.
 * Run `npx tsx tests/scripts/write-licences.ts` after changing a dependency; a test fails while the list is stale.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

interface LockedPackage {
  readonly version: string;
  readonly license?: string;
  readonly dependencies?: Readonly<Record<string, string>>;
}

const LIST = join('public', 'licences.txt');

/** Names of the packages that the page is built from, dependencies of dependencies included, sorted. */
export function runtimePackages(packages: Readonly<Record<string, LockedPackage>>): string[] {
  const found = new Set<string>();
  const waiting = Object.keys(packages['']?.dependencies ?? {});
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    if (found.has(name)) continue;
    found.add(name);
    waiting.push(...Object.keys(packages[`node_modules/${name}`]?.dependencies ?? {}));
  }
  return [...found].sort();
}

function licenceText(name: string, licence: string): string {
  const folder = join('node_modules', name);
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying|ofl)/i.test(entry));
  if (file) return readFileSync(join(folder, file), 'utf8').replace(/\r\n/g, '\n').trim();
  // A package that was published without its licence file has the text here, copied from its source repository.
  const kept = join('tests/scripts/licence-texts', `${name}.txt`);
  if (existsSync(kept)) return readFileSync(kept, 'utf8').trim();
  // Some packages of one family leave the text out; the family's main package carries it.
  const family = join('node_modules', name.startsWith('@tonaljs/') ? 'tonal' : name, 'LICENSE');
  if (!existsSync(family)) throw new Error(`${name} (${licence}) has no licence text: add one by hand`);
  return readFileSync(family, 'utf8').replace(/\r\n/g, '\n').trim();
}

/** The whole list as text: packages that share a licence text stand together above it. */
export function licenceList(): string {
  const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as { packages: Record<string, LockedPackage> };
  const byText = new Map<string, string[]>();
  for (const name of runtimePackages(packages)) {
    const { version = '', license = 'see text' } = packages[`node_modules/${name}`] ?? {};
    const text = licenceText(name, license);
    byText.set(text, [...(byText.get(text) ?? []), `${name} ${version} (${license})`]);
  }
  const blocks = [...byText].map(([text, names]) => `${names.join('\n')}\n\n${text}\n`);
  const head =
    'Contratiempo is under the MIT licence. It is built with the packages below, each under its own licence.\n' +
    'The notice of the sound samples stands beside them, in samples/.\n';
  return [head, ...blocks].join(`\n${'-'.repeat(80)}\n\n`);
}

if (process.argv[1]?.endsWith('write-licences.ts')) writeFileSync(LIST, licenceList());
