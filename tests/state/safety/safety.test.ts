import { describe, expect, it } from 'vitest';
import { readBackup } from '../../../src/exchange/backup/read-backup';
import { chartText, DeviceStorage, deskBench, turns } from '../desk-fixture';

const LOW = chartText('Low Tide');
const HIGH = chartText('High Water', '| Cm7 | F7 | Bb6 | % |');

async function page(device = new DeviceStorage(), ids = 'own') {
  const bench = deskBench({ device, ids });
  await bench.desk.restore();
  const library = await bench.desk.rooms.library();
  const safety = await bench.desk.rooms.safety();
  await turns();
  return {
    ...bench,
    library,
    safety,
    state: () => bench.desk.desk.getState(),
    shown: () => safety.store.getState(),
    titles: () => library.search('').map(({ title }) => title),
    backup: async () => {
      await safety.saveBackup();
      return new TextDecoder().decode(bench.saved.at(-1)?.bytes);
    },
  };
}

/** A device with two charts (one with settings of its own), a set list, preferences and a journal, and its backup. */
async function full() {
  const device = new DeviceStorage();
  const here = await page(device);
  here.desk.run({ kind: 'type', text: LOW });
  here.desk.run({ kind: 'set', settings: { level: 4 } });
  here.desk.run({ kind: 'prefer', preferences: { theme: 'night' } });
  const high = here.library.add(HIGH);
  here.library.changeSet(here.library.addSet('Saturday'), { date: '2026-11-28', charts: [high] });
  device.entries.set('j1', { id: 'j1', at: 5, text: '{"passes":3}' });
  await here.settle();
  return { here, device, low: here.state().chartId, high, text: await here.backup() };
}

describe('A backup of the device', () => {
  it('brings everything to an empty device: charts, settings, set lists, preferences and journal', async () => {
    const { text, low } = await full();
    const there = await page(new DeviceStorage(), 'there');
    await there.safety.considerRestore('backup.json', text);
    expect(there.shown().waiting?.plan.newCharts).toHaveLength(2);
    expect(there.titles(), 'nothing happens before the word is given').toEqual([]);
    await there.safety.restore({ onDifference: 'keep both', withSettings: true });
    await there.settle();
    expect(there.titles().sort()).toEqual(['High Water', 'Low Tide']);
    expect(there.library.store.getState().sets).toMatchObject([{ name: 'Saturday', date: '2026-11-28' }]);
    expect(there.state().preferences.theme).toBe('night');
    expect(there.device.entries.get('j1')?.text).toBe('{"passes":3}');
    there.desk.run({ kind: 'open', chartId: low });
    await there.settle();
    expect(there.state()).toMatchObject({ text: LOW, settings: { level: 4 } });
    const again = readBackup(await there.backup());
    const first = readBackup(text);
    const content = (read: typeof again) =>
      read.ok && { ...read.value.backup, made: '', charts: read.value.backup.charts.map(({ changed: _, ...rest }) => rest) };
    expect(content(again)).toEqual(content(first));
  });

  it('brings nothing to the device it comes from', async () => {
    const { here, text } = await full();
    await here.safety.considerRestore('backup.json', text);
    const plan = here.shown().waiting?.plan;
    expect([plan?.newCharts, plan?.differentCharts, plan?.newSets, plan?.newEntries, plan?.otherRecords]).toEqual([[], [], [], [], []]);
    expect(plan?.sameCharts).toHaveLength(2);
  });

  it('keeps both texts of a chart that went on here and there, and can be put back', async () => {
    const { here, text, low } = await full();
    here.desk.run({ kind: 'type', text: `${LOW}; typed since\n` });
    await here.settle();
    const before = await here.backup();
    await here.safety.considerRestore('backup.json', text);
    expect(here.shown().waiting?.plan.differentCharts).toHaveLength(1);
    await here.safety.restore({ onDifference: 'keep both', withSettings: false });
    await here.settle();
    expect(here.titles().filter((title) => title === 'Low Tide')).toHaveLength(2);
    expect(here.library.textOf(low)).toBe(`${LOW}; typed since\n`);
    await here.safety.undoRestore();
    await here.settle();
    const texts = (backup: string) => {
      const read = readBackup(backup);
      return read.ok ? read.value.backup.charts.map((one) => [one.id, one.text]) : null;
    };
    expect(texts(await here.backup())).toEqual(texts(before));
  });

  it('takes the text of the file for the chart on the desk when that is asked for, and gives the other back', async () => {
    const { here, text, low } = await full();
    here.desk.run({ kind: 'open', chartId: low });
    await here.settle();
    here.desk.run({ kind: 'type', text: `${LOW}; typed since\n` });
    await here.settle();
    await here.safety.considerRestore('backup.json', text);
    await here.safety.restore({ onDifference: 'take the file', withSettings: false });
    await here.settle();
    expect(here.state()).toMatchObject({ chartId: low, text: LOW });
    await here.safety.undoRestore();
    await here.settle();
    expect(here.state()).toMatchObject({ chartId: low, text: `${LOW}; typed since\n` });
  });

  it('takes set lists and journal entries back as well', async () => {
    const { text } = await full();
    const there = await page(new DeviceStorage(), 'there');
    await there.safety.considerRestore('backup.json', text);
    await there.safety.restore({ onDifference: 'keep both', withSettings: false });
    await there.settle();
    await there.safety.undoRestore();
    await there.settle();
    expect(there.titles()).toEqual([]);
    expect(there.library.store.getState().sets).toEqual([]);
    expect(there.device.entries.size).toBe(0);
    const later = await page(there.device, 'later');
    expect(later.titles()).toEqual([]);
    expect(later.library.store.getState().sets).toEqual([]);
  });

  it('comes in by the button for files too, and a file that is none says why', async () => {
    const { text } = await full();
    const there = await page(new DeviceStorage(), 'there');
    const bytes = (content: string) => new TextEncoder().encode(content);
    await there.library.takeIn([{ name: 'backup.json', bytes: bytes(text) }]);
    expect(there.shown().waiting?.name).toBe('backup.json');
    there.safety.leaveRestore();
    await there.library.takeIn([{ name: 'cut.json', bytes: bytes(text.slice(0, 60)) }]);
    expect(there.shown()).toMatchObject({ waiting: null, faults: [{ code: 'no json' }] });
    await there.library.takeIn([{ name: 'other.json', bytes: bytes('{"a":1}') }]);
    expect(there.library.store.getState().intakes).toMatchObject([{ kind: 'refused', name: 'other.json', why: 'unknown kind' }]);
    expect(there.titles()).toEqual([]);
  });

  it('keeps what the device has no room for in memory, says so, and writes it when there is room', async () => {
    const { text, low } = await full();
    const there = await page(new DeviceStorage(), 'there');
    await there.safety.considerRestore('backup.json', text);
    there.device.refuses = () => true;
    await there.safety.restore({ onDifference: 'keep both', withSettings: false });
    expect(there.state().keeping.kind).toBe('refused');
    there.device.refuses = null;
    there.timer.pass(10_000);
    await turns();
    expect(there.device.records.get(`chart/${low}`)).toContain('Low Tide');
  });
});

describe('Clearing and reporting', () => {
  it('deletes everything, charts, settings and journal, and loads the page anew', async () => {
    const { here, device } = await full();
    expect(await here.safety.counts()).toEqual({ charts: 2, sets: 1, entries: 1 });
    await here.safety.deleteAll();
    expect([device.records.size, device.entries.size, device.reloads]).toEqual([0, 0, 1]);
    const fresh = await page(device, 'fresh');
    expect(fresh.titles()).toEqual([]);
    expect(fresh.state().chartId).toBe('demo-last-ferry');
  });

  it('tells other tabs, which keep nothing more, so that nothing comes back by halves, and lose nothing that lies in them', async () => {
    const { here, device, low } = await full();
    const there = await page(device, 'there');
    expect(there.state()).toMatchObject({ chartId: low, text: LOW });
    await here.safety.deleteAll();
    expect(there.state().keeping).toEqual({ kind: 'cleared' });
    expect(there.state().text).toBe(LOW);
    const typed = chartText('Spring Tide');
    there.desk.run({ kind: 'type', text: typed });
    there.library.addSet('Sunday');
    there.timer.pass(20_000);
    await there.settle();
    expect([...device.records.keys()]).toEqual([]);
    expect(there.state()).toMatchObject({ text: typed, keeping: { kind: 'cleared' } });
  });

  it('reports facts and nothing that a person wrote', async () => {
    const { here } = await full();
    await here.safety.copyReport();
    const report = here.shown().report;
    expect(report?.copied).toBe(false);
    expect(report?.text).toContain('browser: test');
    expect(report?.text).not.toMatch(/Tide|Water|Saturday|Em7/);
  });

  it('shows how long the device keeps things, asks, and shows the answer', async () => {
    const { safety, shown } = await page();
    expect(shown().persistence?.lasting).toBe(false);
    await safety.askToLast();
    expect(shown().persistence?.lasting).toBe(true);
  });

  it('remembers when the last backup was saved', async () => {
    const { here, device } = await full();
    await here.settle();
    const later = await page(device, 'later');
    expect(later.shown().lastBackup).toBe(here.shown().lastBackup);
    expect(later.shown().lastBackup).not.toBeNull();
  });
});
