import { mutate } from './mutate';

type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };

/** Values that no field expects, or only some do. */
const HOSTILE: readonly Json[] = [
  null,
  true,
  0,
  -1,
  1.5,
  1e308,
  9_007_199_254_740_992,
  '',
  ' ',
  '__proto__',
  'constructor',
  '<img src=x onerror=alert(1)>',
  '\u0000',
  '\ud800',
  'x'.repeat(5000),
  [],
  {},
  [[[[[[[[]]]]]]]],
  { toString: 1, valueOf: null, length: 1e9 },
  [null, 1, 'a', {}],
];

/** JSON text of `value` with one to four values of it exchanged, dropped, doubled or renamed; now and then the text itself is damaged too. */
export function mutateJson(value: unknown, random: () => number): string {
  const below = (limit: number): number => Math.floor(random() * limit);
  const hostile = (): Json => HOSTILE[below(HOSTILE.length)] ?? null;
  const changed = (at: Json): Json => {
    if (typeof at !== 'object' || at === null || random() < 0.15) return hostile();
    const entries = Object.entries(at);
    const chosen = below(entries.length + 1);
    const [name, inner] = entries[chosen] ?? ['', null];
    const way = random();
    if (entries[chosen] === undefined) entries.push([random() < 0.3 ? '__proto__' : 'more', hostile()]);
    else if (way < 0.1) entries.splice(chosen, 1);
    else if (way < 0.2) entries.splice(chosen, 0, [`${name}2`, inner]);
    else entries[chosen] = [name, changed(inner)];
    return Array.isArray(at) ? entries.map(([, one]) => one) : (Object.fromEntries(entries) as Json);
  };
  let result = JSON.parse(JSON.stringify(value)) as Json;
  for (let edits = below(4) + (random() < 0.05 ? 0 : 1); edits > 0; edits -= 1) result = changed(result);
  const text = JSON.stringify(result);
  return random() < 0.15 ? mutate(text, random) : text;
}

/** Bytes with one to six of them changed, and now and then cut short or continued by what stood there before. */
export function mutateBytes(bytes: Uint8Array, random: () => number): Uint8Array {
  const below = (limit: number): number => Math.floor(random() * limit);
  const result = bytes.slice();
  for (let edits = 1 + below(6); edits > 0; edits -= 1) result[below(result.length)] = below(256);
  if (random() < 0.2) return result.slice(0, below(result.length));
  return random() < 0.1 ? Uint8Array.from([...result, ...result.slice(below(result.length))]) : result;
}
