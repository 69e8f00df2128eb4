import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isDay, movedChart, setFrom, setsFrom } from '../../../src/state/library/set-list';
import { DeviceStorage, deskBench, turns } from '../desk-fixture';

async function page(device: DeviceStorage, ids: string) {
  const bench = deskBench({ device, ids });
  await bench.desk.restore();
  const library = await bench.desk.rooms.library();
  return { ...bench, library, sets: () => library.store.getState().sets };
}

describe('Set lists', () => {
  it('are kept with name, day and order, and come back after a reload', async () => {
    const device = new DeviceStorage();
    const { library, settle } = await page(device, 'a');
    const id = library.addSet('Quay Street, Saturday');
    library.changeSet(id, { date: '2026-11-28', charts: ['demo-last-ferry', 'demo-the-night-pilot', 'demo-last-ferry'] });
    await settle();
    const again = await page(device, 'b');
    await turns();
    expect(again.sets()).toMatchObject([
      { name: 'Quay Street, Saturday', date: '2026-11-28', charts: ['demo-last-ferry', 'demo-the-night-pilot', 'demo-last-ferry'] },
    ]);
  });

  it('stand in the order of their days, those without one last', async () => {
    const { library, sets } = await page(new DeviceStorage(), 'a');
    for (const [name, date] of [
      ['none', null],
      ['late', '2027-01-01'],
      ['soon', '2026-11-28'],
    ] as const)
      library.changeSet(library.addSet(name), { date });
    expect(sets().map(({ name }) => name)).toEqual(['soon', 'late', 'none']);
  });

  it('of two tabs are both kept, and one that was taken away stays away until it is brought back', async () => {
    const device = new DeviceStorage();
    const a = await page(device, 'a');
    const b = await page(device, 'b');
    const first = a.library.addSet('first');
    b.library.addSet('second');
    await a.settle();
    await b.settle();
    await a.settle();
    expect(
      a
        .sets()
        .map(({ name }) => name)
        .sort(),
    ).toEqual(['first', 'second']);
    a.library.removeSet(first);
    await a.settle();
    b.library.addSet('third');
    await b.settle();
    await a.settle();
    expect(
      a
        .sets()
        .map(({ name }) => name)
        .sort(),
    ).toEqual(['second', 'third']);
    a.library.undoRemoval();
    await a.settle();
    expect(
      a
        .sets()
        .map(({ name }) => name)
        .sort(),
    ).toEqual(['first', 'second', 'third']);
  });

  it('that cannot be read are put aside untouched', async () => {
    const device = new DeviceStorage();
    device.records.set('sets', 'garbage');
    const { library, settle } = await page(device, 'a');
    library.addSet('new');
    await settle();
    expect(device.records.get('quarantine/sets')).toBe('garbage');
    expect(device.records.get('sets')).toContain('new');
  });

  it('are read field by field, whatever is found', () => {
    expect(setFrom({ id: 'x', name: 'n', changed: 1, date: '2026-02-30', charts: ['a', 3] })).toEqual({
      id: 'x',
      name: 'n',
      changed: 1,
      date: null,
      charts: ['a'],
    });
    fc.assert(fc.property(fc.anything(), (value) => void setsFrom(value)));
    expect(['2026-11-28', '2024-02-29'].every(isDay)).toBe(true);
    expect(['2026-13-01', '2023-02-29', 'tomorrow', '', null, 5].some(isDay)).toBe(false);
  });

  it('lose and double no chart when one is moved', () => {
    fc.assert(
      fc.property(fc.array(fc.string()), fc.integer({ min: -2, max: 12 }), fc.integer({ min: -2, max: 12 }), (charts, from, to) => {
        expect([...movedChart(charts, from, to)].sort()).toEqual([...charts].sort());
      }),
    );
    expect(movedChart(['a', 'b', 'c'], 0, 2)).toEqual(['b', 'c', 'a']);
  });
});
