/** Every record that a device may hold, damaged in every way: the page opens, and what was kept is still there, in its place or put aside. */
import { describe, expect, it } from 'vitest';
import { arrange } from '../../src/music/score';
import { RECORD_VERSION } from '../../src/state/records';
import { createSheetDesk } from '../../src/state/sheet/sheet-desk';
import { chartText, DeviceStorage, deskBench } from './desk-fixture';

/** Opens a page with all its rooms on a device. */
async function open(device: DeviceStorage, ids: string) {
  const bench = deskBench({ device, ids });
  await bench.desk.restore();
  const library = await bench.desk.rooms.library();
  const safety = await bench.desk.rooms.safety();
  const journal = await bench.desk.rooms.journal();
  const sheet = createSheetDesk({ desk: bench.desk, arrange, storage: device.tab() });
  await bench.settle();
  return { ...bench, library, safety, journal, sheet, state: () => bench.desk.desk.getState() };
}

const LOW = chartText('Low Tide');
const HIGH = chartText('High Water', '| Cm7 | F7 | Bb6 | % |');

/** A device after a visit in which everything was used. */
async function used(): Promise<DeviceStorage> {
  const device = new DeviceStorage();
  const { desk, library, sheet, safety, settle } = await open(device, 'own');
  desk.run({ kind: 'type', text: LOW });
  await settle();
  desk.run({ kind: 'set', settings: { level: 4 } });
  desk.run({ kind: 'prefer', preferences: { theme: 'night' } });
  library.changeSet(library.addSet('Saturday'), { charts: [library.add(HIGH)] });
  sheet.note({ teacher: 'Slowly' });
  sheet.choose({});
  await safety.saveBackup();
  await settle();
  return device;
}

const copyOf = (device: DeviceStorage): DeviceStorage => {
  const copy = new DeviceStorage();
  for (const [key, text] of device.records) copy.records.set(key, text);
  return copy;
};

const DAMAGES: readonly (readonly [string, (text: string) => string])[] = [
  ['is empty', () => ''],
  ['was cut off', (text) => text.slice(0, text.length >> 1)],
  ['is no record', () => 'null'],
  ['is a record of another kind', () => '{"record":"tide table","version":1,"body":{}}'],
  ['holds nothing that belongs there', (text) => text.replace(/"body":.*\}$/s, '"body":[7]}')],
];
/** Copies of things that stand elsewhere, or are measured again in seconds. */
const worthKeeping = (key: string): boolean => key.startsWith('chart/');

const whole = await used();
const keys = [...whole.records.keys()];

describe('A damaged record', () => {
  it('may be any of those that a visit leaves', () => {
    for (const key of ['shelf', 'desk', 'preferences', 'sets', 'safety', 'sheet']) expect(keys.join(' ')).toContain(key);
    expect(keys.filter((key) => key.startsWith('chart/'))).toHaveLength(2);
    expect(keys.filter((key) => key.startsWith('settings/')).length).toBeGreaterThan(0);
  });

  it.each(keys.flatMap((key) => DAMAGES.map(([what, damage]) => ({ key, what, damage }))))(
    '$key that $what stops nothing and takes nothing else with it',
    async ({ key, damage }) => {
      const device = copyOf(whole);
      const damaged = damage(whole.records.get(key) ?? '');
      device.records.set(key, damaged);
      const { state, desk, library, settle } = await open(device, 'later');
      expect(state().music, 'there is music').not.toBeNull();
      // Whatever is done next is kept, and what could not be read lies where it can be fetched.
      const chartId = worthKeeping(key) ? key.slice('chart/'.length) : null;
      if (chartId !== null) desk.run({ kind: 'open', chartId });
      await settle();
      // A chart that cannot be read leaves the one before on the desk.
      if (state().chartId !== chartId) desk.run({ kind: 'new chart' });
      desk.run({ kind: 'type', text: chartText('Slack Water') });
      await settle();
      expect(library.search('').map(({ title }) => title)).toContain('Slack Water');
      for (const [other, text] of whole.records)
        if (other !== key && worthKeeping(other)) expect(device.records.get(other), other).toBe(text);
      if (worthKeeping(key)) {
        const lies = [device.records.get(key), device.records.get(`quarantine/${key}`)];
        expect(lies, 'the damaged text itself').toContain(damaged);
      } else expect(library.search('').map(({ title }) => title)).toEqual(expect.arrayContaining(['Low Tide', 'High Water']));
    },
  );
});

describe('Rolled back to an older version', () => {
  it('the page leaves what a newer one wrote where it can be fetched, says so, and the newer one finds its charts again', async () => {
    const device = await used();
    const newer = new Map<string, string>();
    for (const [key, text] of device.records) {
      const next = text.replace(`"version":${RECORD_VERSION},"body"`, `"version":${RECORD_VERSION + 1},"tides":[1,2],"body"`);
      if (next !== text) newer.set(key, next);
      device.records.set(key, next);
    }
    expect(newer.size).toBeGreaterThan(5);
    const { state, desk, settle } = await open(device, 'older');
    expect(state().music).not.toBeNull();
    expect(state().putAside.length, 'it is said').toBeGreaterThan(0);
    desk.run({ kind: 'prefer', preferences: { theme: 'paper' } });
    desk.run({ kind: 'type', text: chartText('Slack Water') });
    await settle();
    for (const [key, text] of newer)
      expect([device.records.get(key), device.records.get(`quarantine/${key}`)], `${key} is in its place or put aside`).toContain(text);
  });
});
