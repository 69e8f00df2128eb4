import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { createJournalStore, openJournal } from '../../src/device/journal-store';

/** Against `fake-indexeddb`, an independent in-memory database that passes the W3C tests of IndexedDB in the main. */
let store = createJournalStore();
const ids = async (from = 0, to = Number.MAX_SAFE_INTEGER) => (await store.between(from, to)).map(({ id }) => id);

beforeEach(async () => {
  await store.clear();
});

describe('The journal on the device', () => {
  it('gives entries in the order of time, from a moment up to but not at another', async () => {
    expect(
      await store.add([
        { id: 'c', at: 30, text: '{}' },
        { id: 'a', at: 10, text: '{"passes":3}' },
        { id: 'b', at: 20, text: '{}' },
      ]),
    ).toEqual({ kind: 'kept' });
    expect(await ids()).toEqual(['a', 'b', 'c']);
    expect(await ids(10, 30)).toEqual(['a', 'b']);
    expect(await ids(30, 10)).toEqual([]);
  });

  it('never changes an entry that is there, and adds it once', async () => {
    await store.add([{ id: 'a', at: 10, text: 'first' }]);
    await store.add([
      { id: 'a', at: 99, text: 'second' },
      { id: 'b', at: 20, text: 'new' },
    ]);
    expect(await store.between(0, 100)).toEqual([
      { id: 'a', at: 10, text: 'first' },
      { id: 'b', at: 20, text: 'new' },
    ]);
  });

  it('removes what it is told to and nothing else, and outlives the page', async () => {
    await store.add(['a', 'b', 'c'].map((id, at) => ({ id, at, text: '' })));
    await store.remove(['b', 'unknown']);
    store = createJournalStore();
    expect(await ids()).toEqual(['a', 'c']);
  });

  it('loses none of any number of entries', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uniqueArray(fc.string({ minLength: 1 }), { maxLength: 20 }), async (names) => {
        await store.clear();
        await store.add(names.map((id, at) => ({ id, at, text: id })));
        expect((await ids()).sort()).toEqual([...names].sort());
      }),
      { numRuns: 20 },
    );
  });

  it('opens the database again when it was closed behind its back', async () => {
    let opened = 0;
    const connections: Awaited<ReturnType<typeof openJournal>>[] = [];
    const store = createJournalStore(async () => {
      opened += 1;
      const here = await openJournal();
      connections.push(here);
      return here;
    });
    expect(await store.add([{ id: 'closed-1', at: 1, text: '1' }])).toEqual({ kind: 'kept' });
    connections[0]?.close();
    expect(await store.add([{ id: 'closed-2', at: 2, text: '2' }])).toEqual({ kind: 'kept' });
    expect(opened).toBe(2);
    await store.remove(['closed-1', 'closed-2']);
  });

  it('says why when the device refuses, and tries again the next time', async () => {
    let refuses = true;
    const moody = createJournalStore(() => (refuses ? Promise.reject(new Error('no database here')) : openJournal()));
    expect(await moody.add([{ id: 'x', at: 1, text: '' }])).toEqual({ kind: 'refused', reason: 'no database here' });
    refuses = false;
    expect(await moody.add([{ id: 'x', at: 1, text: '' }])).toEqual({ kind: 'kept' });
    await moody.remove(['x']);
  });
});
