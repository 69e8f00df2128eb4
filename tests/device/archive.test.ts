import { describe, expect, it } from 'vitest';
import { type ArchiveDatabase, createArchive } from '../../src/device/archive';

/** A database as a map, as far as the archive uses it. */
function database(records: Map<string, unknown>): ArchiveDatabase {
  return {
    entries: async () => [...records],
    remove: async (keys) => {
      for (const key of keys) records.delete(key);
    },
    put: async (key, text) => void records.set(key, text),
    clear: async () => records.clear(),
  };
}

/** The small storage, as a map. */
function small(records: Map<string, string>): globalThis.Storage {
  const stand = {
    get length() {
      return records.size;
    },
    key: (index: number) => [...records.keys()][index] ?? null,
    getItem: (key: string) => records.get(key) ?? null,
    removeItem: (key: string) => records.delete(key),
  };
  return stand as unknown as globalThis.Storage;
}

const bench = (inDatabase: readonly (readonly [string, unknown])[], inSmall: readonly (readonly [string, string])[]) => {
  const records = new Map<string, unknown>(inDatabase);
  const local = new Map<string, string>(inSmall);
  return { records, local, archive: createArchive({ openDatabase: async () => database(records), local: () => small(local) }) };
};

describe('The archive of the device', () => {
  it('gives every record, and of a copy that was never confirmed the newer text', async () => {
    const { archive } = bench(
      [
        ['chart/1', 'old'],
        ['odd', 7],
      ],
      [
        ['contratiempo/unconfirmed/chart/1', 'new'],
        ['another page', 'x'],
      ],
    );
    expect([...(await archive.all())]).toEqual([['chart/1', 'new']]);
  });

  it('brings what was kept while the database was refused into it, once, and never over what lies there: both texts of a chart stay', async () => {
    const { archive, records, local } = bench(
      [
        ['chart/1', 'in the database'],
        ['chart/3', 'the same'],
        ['preferences', 'of the database'],
      ],
      [
        ['contratiempo/chart/1', 'in the small one'],
        ['contratiempo/chart/2', 'typed then'],
        ['contratiempo/chart/3', 'the same'],
        ['contratiempo/preferences', 'of that day'],
      ],
    );
    const brought = ['chart/1', 'chart/3', 'preferences', 'chart/1-beside', 'chart/2'];
    expect([...(await archive.all()).keys()]).toEqual(brought);
    expect([...records]).toEqual([
      ['chart/1', 'in the database'],
      ['chart/3', 'the same'],
      ['preferences', 'of the database'],
      ['chart/1-beside', 'in the small one'],
      ['chart/2', 'typed then'],
    ]);
    await archive.all();
    expect([...records.keys()]).toEqual(brought);
    expect([...local.keys()]).toEqual(['contratiempo/chart/3', 'contratiempo/preferences']);
  });

  it('works on the small storage alone where there is no database', async () => {
    const local = new Map([['contratiempo/chart/1', 'text']]);
    const archive = createArchive({ openDatabase: () => Promise.reject(new Error('private window')), local: () => small(local) });
    expect((await archive.all()).get('chart/1')).toBe('text');
    await archive.remove(['chart/1']);
    expect(local.size).toBe(0);
  });

  it('removes a record with its copies, and clears everything of this page and nothing else', async () => {
    const { archive, records, local } = bench(
      [
        ['a', '1'],
        ['b', '2'],
      ],
      [
        ['contratiempo/unconfirmed/a', '1'],
        ['contratiempo/c', '3'],
        ['another page', 'x'],
      ],
    );
    await archive.remove(['a']);
    expect([...records.keys(), ...local.keys()]).toEqual(['b', 'contratiempo/c', 'another page']);
    await archive.clear();
    expect([...records.keys(), ...local.keys()]).toEqual(['another page']);
  });
});
