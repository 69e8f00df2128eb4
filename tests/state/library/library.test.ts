import { describe, expect, it } from 'vitest';
import { FIRST_ASSIGNMENT, FIRST_RESULTS } from '../../exchange/assignment/stored-assignments';
import { chartText, DeviceStorage, deskBench, turns } from '../desk-fixture';

const LOW = chartText('Low Tide');
const HIGH = chartText('High Water', '| Cm7 | F7 | Bb6 | % |');

async function page(device = new DeviceStorage(), ids?: string) {
  const bench = deskBench(ids === undefined ? { device } : { device, ids });
  await bench.desk.restore();
  const library = await bench.desk.rooms.library();
  await turns();
  return { ...bench, library, state: () => bench.desk.desk.getState(), titles: () => library.search('').map(({ title }) => title) };
}

describe('The shelf', () => {
  it('finds charts by title, by chord and by comment, whatever the case and accents, titles first', async () => {
    const { library } = await page();
    const low = library.add(`${LOW}; for Ramón, Dm7b5 maybe\n`);
    const high = library.add(HIGH);
    const found = (query: string) => library.search(query).map(({ id }) => id);
    expect(found('tide')).toEqual([low]);
    expect(found('RAMON low')).toEqual([low]);
    expect(found('d min')).toEqual([]);
    expect(found('B♭6')).toEqual([high]);
    expect(found('em7').sort()).toEqual([low, high].sort());
  });

  it('duplicates a chart with its settings; the first stays as it was', async () => {
    const { desk, library, settle, state, titles } = await page();
    desk.run({ kind: 'type', text: LOW });
    desk.run({ kind: 'set', settings: { level: 4 } });
    const first = state().chartId;
    const copy = await library.duplicate(first, 'Low Tide (copy)');
    await settle();
    desk.run({ kind: 'open', chartId: copy });
    await settle();
    expect(state().text).toBe(LOW.replace('Low Tide', 'Low Tide (copy)'));
    expect(state().settings.level).toBe(4);
    expect(titles().sort()).toEqual(['Low Tide', 'Low Tide (copy)']);
    expect(library.textOf(first)).toBe(LOW);
  });

  it('renames by the title line alone, open or not, and puts a line where there is none', async () => {
    const { desk, library, settle, state, titles } = await page();
    const id = library.add('[A]\n| C | G7 |\n');
    library.rename(id, 'Slack; Water\n');
    await settle();
    expect(library.textOf(id)).toBe('title: Slack Water\n[A]\n| C | G7 |\n');
    desk.run({ kind: 'open', chartId: id });
    await settle();
    library.rename(id, 'Spring Tide');
    await settle();
    expect(state().text).toBe('title: Spring Tide\n[A]\n| C | G7 |\n');
    expect(titles()).toEqual(['Spring Tide']);
  });

  it('takes a chart away and brings it back with its text, also after a reload', async () => {
    const device = new DeviceStorage();
    const first = await page(device);
    first.desk.run({ kind: 'type', text: LOW });
    await first.settle();
    const { chartId } = first.state();
    first.library.remove(chartId);
    await first.settle();
    expect(first.titles()).toEqual([]);
    expect(first.state().chartId).toBe('demo-last-ferry');
    const second = await page(device, 'b');
    expect(second.titles()).toEqual([]);
    expect(second.library.removedCharts().map(({ title }) => title)).toEqual(['Low Tide']);
    second.library.restore(chartId);
    await second.settle();
    expect(second.titles()).toEqual(['Low Tide']);
    first.library.undoRemoval();
    await first.settle();
    expect(first.library.textOf(chartId)).toBe(LOW);
  });

  it('stays without what was taken away in another tab', async () => {
    const device = new DeviceStorage();
    const a = await page(device, 'a');
    const id = a.library.add(LOW);
    await a.settle();
    const b = await page(device, 'b');
    expect(b.titles()).toEqual(['Low Tide']);
    a.library.remove(id);
    await a.settle();
    await b.settle();
    expect(b.titles()).toEqual([]);
    b.library.add(HIGH);
    await b.settle();
    await a.settle();
    expect(a.titles()).toEqual(['High Water']);
  });

  it('lets go of a chart thirty days after it was taken away, and of no other', async () => {
    const device = new DeviceStorage();
    const day = 24 * 3600 * 1000;
    const entry = (id: string, changed: number, removed?: true) => ({ id, title: id, changed, ...(removed && { removed }) });
    device.records.set(
      'shelf',
      JSON.stringify({ record: 'shelf', version: 1, body: { entries: [entry('old', 0, true), entry('kept', 0)] } }),
    );
    for (const id of ['old', 'kept'])
      device.records.set(`chart/${id}`, JSON.stringify({ record: 'chart', version: 1, body: { text: LOW, good: null } }));
    const bench = deskBench({ device, ports: {} });
    await bench.desk.restore();
    const { createLibrary } = await import('../../../src/state/library/library');
    await createLibrary({
      desk: bench.desk,
      storage: device.tab(),
      archive: device.archive(),
      saver: { save: () => undefined },
      readSheet: async () => ({ ok: false, faults: [] }),
      considerBackup: async () => undefined,
      considerAssignments: async () => undefined,
      now: () => 31 * day,
      newId: () => 'x',
    });
    expect([...device.records.keys()].filter((key) => key.startsWith('chart/'))).toEqual(['chart/kept']);
  });

  it('comes back whole from its charts when its own record cannot be read', async () => {
    const device = new DeviceStorage();
    const first = await page(device);
    first.library.add(LOW);
    first.library.add(HIGH);
    await first.settle();
    device.records.set('shelf', '{"record":"shelf","vers');
    device.records.set('chart/own-1', 'garbage');
    const second = await page(device, 'b');
    expect(second.titles()).toEqual(['High Water']);
    expect(second.library.store.getState().asides.map(({ key }) => key)).toEqual(['shelf']);
    await second.library.saveAside('shelf');
    expect(new TextDecoder().decode(second.saved[0]?.bytes)).toBe('{"record":"shelf","vers');
    // The chart that cannot be read is left where it lies until it is opened; nothing was written over it.
    expect(device.records.get('chart/own-1')).toBe('garbage');
  });
});

describe('Files that come in', () => {
  const bytes = (text: string) => new TextEncoder().encode(text);

  it('become charts of their own, with faults as they are, and the first is opened', async () => {
    const { library, settle, state, titles } = await page();
    await library.takeIn([
      { name: 'low-tide.txt', bytes: bytes(LOW.replaceAll('\n', '\r\n')) },
      { name: 'odd.chart.txt', bytes: bytes(`${HIGH}| H7 |\n`) },
    ]);
    await settle();
    expect(library.store.getState().intakes).toMatchObject([
      { kind: 'taken in', faults: 0 },
      { kind: 'taken in', faults: 1 },
    ]);
    expect(state().text).toBe(LOW);
    expect(titles().sort()).toEqual(['High Water', 'Low Tide']);
  });

  it('that are an assignment go where its own button leads, however damaged; JSON of another kind is one fault that says what is expected', async () => {
    const { library, desk } = await page();
    const assigned = (await (await desk.rooms.journal()).assignments()).store;
    await library.takeIn([
      { name: 'low-tide.tarea.json', bytes: bytes(FIRST_ASSIGNMENT) },
      { name: 'cut.tarea.json', bytes: bytes(FIRST_ASSIGNMENT.slice(0, 90)) },
      { name: 'ines.resultado.json', bytes: bytes(FIRST_RESULTS) },
      { name: 'shopping.json', bytes: bytes('{"milk":2}') },
    ]);
    expect(assigned.getState()).toMatchObject({
      offer: { assignment: { title: 'Low Tide' } },
      refused: [{ name: 'cut.tarea.json', faults: [{ code: 'no json' }] }],
      results: [{ who: 'Inés' }],
    });
    expect(library.store.getState().intakes).toMatchObject([{ kind: 'refused', name: 'shopping.json', why: 'unknown kind' }]);
  });

  it('that cannot be read are refused one by one with a reason, and the others come in', async () => {
    const { library, titles } = await page();
    await library.takeIn([
      { name: 'photo.png', bytes: bytes('x') },
      { name: 'binary.txt', bytes: Uint8Array.from([0xc3, 0x28, 0, 1]) },
      { name: 'huge.txt', bytes: new Uint8Array(3 * 1024 * 1024) },
      { name: 'sheet.mxl', bytes: bytes('no zip') },
      { name: 'low.txt', bytes: bytes(LOW) },
    ]);
    const outcomes = library.store.getState().intakes.map((intake) => (intake.kind === 'refused' ? intake.why : intake.kind));
    expect(outcomes).toEqual(['unknown kind', 'no text', 'too large', 'unreadable', 'taken in']);
    expect(titles()).toEqual(['Low Tide']);
  });
});
