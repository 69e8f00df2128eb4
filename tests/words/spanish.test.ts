import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { SPANISH } from '../../src/words/spanish';

const FOLDER = 'src/words';

/** Tables that are not said: names of languages, which every language gives for itself, keys, links, and the developers' page, which is in no build. */
const NOT_SAID = ['LANGUAGES', 'LANGUAGE_NAMES', 'NOTE_NAMINGS', 'PARTS_WORDS', 'WORD_LINKS'];

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/** Every table that a file of words exports, by its name. */
async function tables(): Promise<ReadonlyMap<string, object>> {
  const found = new Map<string, object>();
  for (const file of readdirSync(FOLDER).filter((name) => name.endsWith('.ts') && name !== 'spanish.ts')) {
    const exported: Record<string, unknown> = await import(join(process.cwd(), FOLDER, file));
    for (const [name, value] of Object.entries(exported)) if (isObject(value) && !NOT_SAID.includes(name)) found.set(name, value);
  }
  return found;
}

/** Where two tables differ in their keys or in the kind of what stands there: `levels.3 is missing`. Rows of a list are compared by number alone. */
function gaps(english: unknown, said: unknown, at: string): readonly string[] {
  if (said === undefined) return [`${at} is missing`];
  if (typeof english !== typeof said || Array.isArray(english) !== Array.isArray(said)) return [`${at} is of another kind`];
  if (typeof said === 'string') {
    // In a list of pieces, what stands before in one language stands behind in another.
    return said.trim() === '' && english !== '' && !/\.\d+$/.test(at) ? [`${at} is empty`] : [];
  }
  if (typeof english === 'function') return (said as () => void).length > english.length ? [`${at} wants more facts`] : [];
  // Other spellings of a word differ in number.
  if (!isObject(english) || !isObject(said) || at.endsWith('.also')) return [];
  const keys = new Set([...Object.keys(english), ...Object.keys(said)]);
  return [...keys].flatMap((key) =>
    key in english ? gaps(english[key], said[key], `${at}.${key}`) : [`${at}.${key} says what nobody asks`],
  );
}

describe('The Spanish tables', () => {
  it('are there for every exported table of words, once each', async () => {
    const listed = SPANISH.map(([table]) => table);
    expect(new Set(listed).size).toBe(listed.length);
    const missing = [...(await tables())].filter(([, table]) => !listed.includes(table)).map(([name]) => name);
    expect(missing, 'add these to src/words/spanish.ts').toEqual([]);
    expect((await tables()).size).toBe(listed.length);
  });

  it('are whole: every entry, of the same kind, nothing besides', async () => {
    // Before any language is in force the tables hold English.
    expect([...(await tables())].flatMap(([name, table]) => gaps(table, SPANISH.find(([of]) => of === table)?.[1], name))).toEqual([]);
  });

  it('would be found out if they were not', () => {
    const table = { a: 'x', b: { c: () => 'y' }, rows: ['1', '2'] };
    expect(gaps(table, { a: 'z', b: {}, rows: ['1'] }, 'T')).toEqual(['T.b.c is missing', 'T.rows.1 is missing']);
    expect(gaps(table, { a: () => 'z', b: { c: () => 'y' }, rows: ['1', '2'], d: '' }, 'T')).toEqual([
      'T.a is of another kind',
      'T.d says what nobody asks',
    ]);
  });
});

describe('A language table with a missing entry', () => {
  it('leaves that entry in English, whatever else it lacks or brings, and comes back whole', async () => {
    vi.resetModules();
    const { SCREEN } = await import('../../src/words/screen');
    const before = structuredClone({ play: SCREEN.play, places: SCREEN.places, levels: SCREEN.levels });
    vi.doMock('../../src/words/spanish', () => ({
      SPANISH: [
        [SCREEN, { play: 'Tocar', stop: undefined, places: { chart: 'Cifrado' }, levels: 'ninguno', tempo: 'lento', unheardOf: 'x' }],
      ],
    }));
    const { speak } = await import('../../src/words/speak');
    await speak('es');
    expect(SCREEN.play).toBe('Tocar');
    expect(SCREEN.places).toEqual({ ...before.places, chart: 'Cifrado' });
    // Missing, undefined, and of another kind: English stands, and sentences still take their facts.
    expect(SCREEN.stop).toBe('Stop');
    expect(SCREEN.levels).toEqual(before.levels);
    expect(SCREEN.tempo(60, 'half')).toBe(60);
    expect('unheardOf' in SCREEN).toBe(false);
    await speak('en');
    expect({ play: SCREEN.play, places: SCREEN.places, levels: SCREEN.levels }).toEqual(before);
    vi.doUnmock('../../src/words/spanish');
    vi.resetModules();
  });
});
