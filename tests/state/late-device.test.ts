/** A device that does not answer: the page opens all the same, says so, and loses nothing whatever the answer is. The clock is turned by hand. */
import { describe, expect, it } from 'vitest';
import { arrange } from '../../src/music/score';
import { PATIENCE_MS, underChanges } from '../../src/state/patience';
import { createSheetDesk } from '../../src/state/sheet/sheet-desk';
import { NO_NOTES } from '../../src/state/sheet/sheet-notes';
import { chartText, DeviceStorage, deskBench } from './desk-fixture';
import { latePage as page } from './late-page';

const MINE = chartText('Low Tide');
const THEIRS = chartText('High Water', '| Cm7 | F7 | Bb6 | % |');

/** A device on which one chart was typed, its level set, and the theme chosen. */
async function used(): Promise<DeviceStorage> {
  const device = new DeviceStorage();
  const { desk, settle } = deskBench({ device });
  await desk.restore();
  desk.run({ kind: 'set', settings: { level: 4, colour: 'jazz' } });
  await settle();
  desk.run({ kind: 'type', text: MINE });
  desk.run({ kind: 'prefer', preferences: { theme: 'night', paper: 'Letter' } });
  await settle();
  return device;
}

describe('A device that answers late', () => {
  it('keeps the page from opening for two seconds at most, and it is said', async () => {
    const device = await used();
    device.hangs = () => true;
    const bench = page(device);
    expect(await bench.open(PATIENCE_MS - 1)).toBe(false);
    await bench.pass(1);
    // The settings of the chart that lies there are not waited for as long again.
    await bench.pass(100);
    expect(bench.stands()).toBe(true);
    expect(bench.state()).toMatchObject({ keeping: { kind: 'late' }, chartId: bench.desk.demos[0]?.id });
    expect(bench.state().music).not.toBeNull();
  });

  it('brings everything when it answers at last', async () => {
    const device = await used();
    device.hangs = () => true;
    const bench = page(device);
    await bench.open(PATIENCE_MS);
    await bench.pass(100);
    device.answer();
    await bench.pass(300);
    expect(bench.state()).toMatchObject({ keeping: { kind: 'kept' }, text: MINE, preferences: { theme: 'night', paper: 'Letter' } });
    expect(bench.state().settings).toMatchObject({ level: 4, colour: 'jazz' });
  });

  it('lays what was changed meanwhile over what it kept, and takes nothing off the desk', async () => {
    const device = await used();
    const demo = deskBench({ device });
    await demo.desk.restore();
    const first = demo.desk.demos[0]?.id ?? '';
    demo.desk.run({ kind: 'open', chartId: first });
    await demo.settle();
    demo.desk.run({ kind: 'set', settings: { level: 3, hands: 'wide' } });
    await demo.settle();
    device.hangs = () => true;
    const bench = page(device, 'late');
    await bench.open(PATIENCE_MS);
    await bench.pass(100);
    bench.desk.run({ kind: 'set', settings: { level: 5 } });
    bench.desk.run({ kind: 'prefer', preferences: { theme: 'paper' } });
    await bench.pass(300);
    device.answer();
    await bench.pass(300);
    expect(bench.state()).toMatchObject({ chartId: first, settings: { level: 5, hands: 'wide' } });
    expect(bench.state().preferences).toMatchObject({ theme: 'paper', paper: 'Letter' });
    await bench.pass(300);
    expect(device.records.get(`settings/${first}`)).toContain('"hands":"wide"');
    expect(device.records.get('preferences')).toContain('"paper":"Letter"');
  });

  it('puts no chart over one that was typed or opened meanwhile', async () => {
    const device = await used();
    device.hangs = () => true;
    const bench = page(device, 'late');
    await bench.open(PATIENCE_MS);
    await bench.pass(100);
    bench.desk.run({ kind: 'type', text: THEIRS });
    await bench.pass(300);
    device.answer();
    await bench.pass(300);
    await bench.pass(300);
    expect(bench.state()).toMatchObject({ text: THEIRS, keeping: { kind: 'kept' } });
    expect(device.records.get('chart/late-1')).toContain('High Water');
    expect(
      bench
        .state()
        .shelf.map(({ title }) => title)
        .sort(),
    ).toEqual(['High Water', 'Low Tide']);
  });

  it('leaves a damaged record as it is until it is put aside', async () => {
    const device = await used();
    device.records.set('preferences', 'garbage');
    device.hangs = (act) => act === 'write';
    const bench = page(device);
    await bench.open(PATIENCE_MS);
    await bench.pass(100);
    expect(bench.stands()).toBe(true);
    bench.desk.run({ kind: 'prefer', preferences: { theme: 'paper' } });
    await bench.pass(300);
    expect(device.records.get('preferences')).toBe('garbage');
    device.answer();
    await bench.pass(300);
    await bench.pass(300);
    expect(device.records.get('quarantine/preferences')).toBe('garbage');
    expect(device.records.get('preferences')).toContain('"theme":"paper"');
  });

  it('lets the shelf open, and its charts come later', async () => {
    const device = await used();
    device.hangs = () => true;
    const bench = page(device);
    await bench.open(PATIENCE_MS);
    await bench.pass(100);
    const opening = bench.desk.rooms.library();
    await bench.pass(100);
    const library = await opening;
    expect(library.search('')).toEqual([]);
    device.answer();
    await bench.pass(300);
    expect(library.search('').map(({ title }) => title)).toEqual(['Low Tide']);
  });

  it('shows a sheet without its notes, lays what is written meanwhile over them, and writes nothing before', async () => {
    const device = await used();
    const bench = page(device);
    await bench.open(0);
    const { chartId } = bench.state();
    device.records.set('sheet', JSON.stringify({ version: 1, hands: 'left', habit: 'sixteenths' }));
    device.records.set(`sheet/${chartId}`, JSON.stringify({ version: 1, teacher: 'Slowly.', breaks: [2, 5] }));
    const before = new Map(device.records);
    device.hangs = () => true;
    const { sheet, note, choose } = createSheetDesk({ desk: bench.desk, arrange, storage: device.tab() });
    await bench.pass(PATIENCE_MS - 1);
    expect(sheet.getState().notes, 'it is still waited for').toBeNull();
    await bench.pass(1);
    expect(sheet.getState().notes).toEqual(NO_NOTES);
    note({ teacher: 'Left hand first.' });
    choose({ hands: 'right' });
    await bench.pass(300);
    expect(device.records).toEqual(before);
    device.answer();
    await bench.pass(300);
    expect(sheet.getState().notes).toEqual({ teacher: 'Left hand first.', breaks: [2, 5] });
    expect(sheet.getState().choice).toMatchObject({ hands: 'right', habit: 'sixteenths' });
    expect(device.records.get(`sheet/${chartId}`)).toContain('"breaks":[2,5]');
    expect(device.records.get('sheet')).toContain('"habit":"sixteenths"');
  });

  it('lets the journal open, and keeps hand moves that were known with those ticked meanwhile', async () => {
    const device = await used();
    device.records.set('known-moves', JSON.stringify({ version: 1, moves: ['one'] }));
    const bench = page(device);
    await bench.open(0);
    device.hangs = () => true;
    const opening = bench.desk.rooms.journal();
    await bench.pass(PATIENCE_MS);
    const journal = await opening;
    journal.tick('two', true);
    device.answer();
    await bench.pass(300);
    await bench.pass(300);
    expect([...journal.store.getState().known]).toEqual(['one', 'two']);
    expect(JSON.parse(device.records.get('known-moves') ?? '')).toMatchObject({ moves: ['one', 'two'] });
  });

  it('makes no backup of half of it: it is said, and can be asked for again', async () => {
    const device = await used();
    const bench = page(device);
    await bench.open(0);
    const safety = await bench.desk.rooms.safety();
    device.hangs = () => true;
    void safety.saveBackup();
    await bench.pass(PATIENCE_MS);
    await bench.pass(100);
    expect(safety.store.getState().refused).not.toBeNull();
    expect(bench.saved).toEqual([]);
    device.answer();
    await safety.saveBackup();
    expect(new TextDecoder().decode(bench.saved[0]?.bytes)).toContain('Low Tide');
  });
});

describe('Fields that come late', () => {
  it('go under those that were changed since, and nothing else is touched', () => {
    const base = { level: 2, hands: 'double', loop: null };
    expect(underChanges({ level: 4, hands: 'wide', loop: null }, base, { ...base, level: 5 })).toEqual({
      level: 5,
      hands: 'wide',
      loop: null,
    });
    expect(underChanges({ level: 4, hands: 'wide', loop: null }, base, base)).toEqual({ level: 4, hands: 'wide', loop: null });
  });
});
