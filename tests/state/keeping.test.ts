import { describe, expect, it } from 'vitest';
import { chartText, DeviceStorage, deskBench, turns } from './desk-fixture';

const MINE = chartText('Low Tide');
const THEIRS = chartText('Low Tide', '| Bbmaj7 | Eb7 | F6 | % |');

/** A page that is opened on a device: a desk with what was kept there. */
async function page(device: DeviceStorage, ids?: string) {
  const bench = deskBench(ids === undefined ? { device } : { device, ids });
  await bench.desk.restore();
  return bench;
}

describe('Keeping', () => {
  it('brings typed text, its settings and the preferences back after a reload', async () => {
    const device = new DeviceStorage();
    const first = await page(device);
    first.desk.run({ kind: 'type', text: MINE });
    first.desk.run({ kind: 'set', settings: { level: 3, hands: 'wide', loop: { fromBar: 2, toBar: 4 } } });
    first.desk.run({ kind: 'prefer', preferences: { theme: 'night', tempoUnit: 'quarter' } });
    await first.settle();
    const { desk } = await page(device);
    expect(desk.desk.getState()).toMatchObject({
      text: MINE,
      settings: { level: 3, hands: 'wide', loop: { fromBar: 2, toBar: 4 } },
      preferences: { theme: 'night', tempoUnit: 'quarter' },
      shelf: [{ title: 'Low Tide' }],
    });
  });

  it('writes within 300 ms of the last keystroke, and at once when the page goes away', async () => {
    const device = new DeviceStorage();
    const bench = await page(device);
    bench.desk.run({ kind: 'type', text: MINE });
    expect(bench.desk.desk.getState().keeping.kind).toBe('waiting');
    bench.timer.pass(300);
    await turns();
    expect(device.records.get('chart/own-1')).toContain('Low Tide');
    expect(bench.desk.desk.getState().keeping.kind).toBe('kept');
    bench.desk.run({ kind: 'type', text: `${MINE}; late` });
    await bench.desk.flush();
    expect(device.records.get('chart/own-1')).toContain('; late');
  });

  it('brings faulty text back with the last good music', async () => {
    const device = new DeviceStorage();
    const first = await page(device);
    first.desk.run({ kind: 'type', text: MINE });
    first.desk.run({ kind: 'type', text: `${MINE}| H7 |` });
    await first.settle();
    const { desk } = await page(device);
    expect(desk.desk.getState().text).toBe(`${MINE}| H7 |`);
    expect(desk.desk.getState().faults).toHaveLength(1);
    expect(desk.desk.getState().music?.score.title).toBe('Low Tide');
  });

  it('leaves the demo book as it is: what is typed over a demo is a chart of the player’s own', async () => {
    const bench = await page(new DeviceStorage());
    const demo = bench.desk.demos[0];
    bench.desk.run({ kind: 'type', text: `${demo?.text}; mine` });
    await bench.settle();
    expect(bench.desk.desk.getState().chartId).toBe('own-1');
    bench.desk.run({ kind: 'open', chartId: demo?.id ?? '' });
    await bench.settle();
    expect(bench.desk.desk.getState().text).toBe(demo?.text);
    bench.desk.run({ kind: 'open', chartId: 'own-1' });
    await bench.settle();
    expect(bench.desk.desk.getState().text).toBe(`${demo?.text}; mine`);
  });

  it('brings a text that was typed over a demo back under the settings that were set there', async () => {
    const device = new DeviceStorage();
    const first = await page(device);
    first.desk.run({ kind: 'set', settings: { level: 4, hands: 'wide' } });
    await first.settle();
    first.desk.run({ kind: 'type', text: MINE });
    await first.settle();
    const { desk } = await page(device);
    expect(desk.desk.getState()).toMatchObject({ text: MINE, settings: { level: 4, hands: 'wide' } });
  });

  it('remembers settings for each chart apart', async () => {
    const bench = await page(new DeviceStorage());
    bench.desk.run({ kind: 'set', settings: { level: 4 } });
    await bench.settle();
    bench.desk.run({ kind: 'open', chartId: bench.desk.demos[1]?.id ?? '' });
    await bench.settle();
    expect(bench.desk.desk.getState().settings.level).toBe(2);
    bench.desk.run({ kind: 'open', chartId: bench.desk.demos[0]?.id ?? '' });
    await bench.settle();
    expect(bench.desk.desk.getState().settings.level).toBe(4);
  });

  it('says when the device refuses, loses nothing of the session, and writes when it can again', async () => {
    const device = new DeviceStorage();
    const bench = await page(device);
    device.refuses = () => true;
    bench.desk.run({ kind: 'type', text: MINE });
    await bench.settle();
    expect(bench.desk.desk.getState().keeping).toEqual({ kind: 'refused', reason: device.reason });
    expect(bench.desk.desk.getState().text).toBe(MINE);
    device.refuses = null;
    bench.timer.pass(10_000);
    await turns();
    expect(bench.desk.desk.getState().keeping.kind).toBe('kept');
    expect(device.records.get('chart/own-1')).toContain('Low Tide');
  });

  it('finds a text that the device refused when its chart is opened again', async () => {
    const device = new DeviceStorage();
    const bench = await page(device);
    device.refuses = () => true;
    bench.desk.run({ kind: 'type', text: MINE });
    const { chartId } = bench.desk.desk.getState();
    await bench.settle();
    bench.desk.run({ kind: 'open', chartId: 'demo-the-night-pilot' });
    await bench.settle();
    bench.desk.run({ kind: 'open', chartId });
    await bench.settle();
    expect(bench.desk.desk.getState().text).toBe(MINE);
    device.refuses = null;
    bench.timer.pass(10_000);
    await turns();
    expect(device.records.get(`chart/${chartId}`)).toContain('Low Tide');
  });

  it('puts a corrupt record aside untouched before anything is written in its place', async () => {
    const device = new DeviceStorage();
    device.records.set('preferences', '{"record":"pref');
    device.records.set('shelf', 'garbage');
    const bench = await page(device);
    expect(device.records.get('quarantine/preferences')).toBe('{"record":"pref');
    expect(device.records.get('quarantine/shelf')).toBe('garbage');
    expect(bench.desk.desk.getState().putAside).toEqual(['preferences', 'shelf']);
    bench.desk.run({ kind: 'type', text: MINE });
    await bench.settle();
    expect(bench.desk.desk.getState().shelf).toHaveLength(1);
  });

  it('never overwrites a corrupt record that could not be put aside', async () => {
    const device = new DeviceStorage();
    device.records.set('preferences', 'garbage');
    device.refuses = (key) => key.startsWith('quarantine/');
    const bench = await page(device);
    bench.desk.run({ kind: 'prefer', preferences: { theme: 'night' } });
    await bench.settle();
    expect(device.records.get('preferences')).toBe('garbage');
    expect(bench.desk.desk.getState().preferences.theme).toBe('night');
  });
});

/** Two tabs in which the same chart lies, typed before either was opened. */
async function twoTabs() {
  const device = new DeviceStorage();
  const begun = await page(device);
  begun.desk.run({ kind: 'type', text: MINE });
  await begun.settle();
  return { device, a: await page(device, 'a'), b: await page(device, 'b') };
}

describe('Two tabs', () => {
  it('say when the other one changed the chart, and offer both texts', async () => {
    const { a, b } = await twoTabs();
    b.desk.run({ kind: 'type', text: THEIRS });
    await b.settle();
    await a.settle();
    expect(a.desk.desk.getState()).toMatchObject({ text: MINE, otherTab: { kind: 'fresh', text: THEIRS } });
    a.desk.run({ kind: 'show the other tab' });
    await a.settle();
    expect(a.desk.desk.getState()).toMatchObject({ text: THEIRS, otherTab: null, chartId: 'own-1' });
  });

  it('keep this one as a chart of its own when that is asked for', async () => {
    const { device, a, b } = await twoTabs();
    b.desk.run({ kind: 'type', text: THEIRS });
    await b.settle();
    await a.settle();
    a.desk.run({ kind: 'keep this one' });
    await a.settle();
    expect(device.records.get('chart/a-1')).toContain('Gm7');
    expect(device.records.get('chart/own-1')).toContain('Bbmaj7');
  });

  it('lose neither text when both were typing in the same chart', async () => {
    const { device, a, b } = await twoTabs();
    a.desk.run({ kind: 'type', text: `${MINE}; from a` });
    b.desk.run({ kind: 'type', text: `${MINE}; from b` });
    await Promise.all([a.settle(), b.settle()]);
    await a.settle();
    await b.settle();
    const kept = [...device.records].filter(([key]) => key.startsWith('chart/')).map(([, text]) => text);
    expect(kept.some((text) => text.includes('; from a'))).toBe(true);
    expect(kept.some((text) => text.includes('; from b'))).toBe(true);
    expect([a, b].some(({ desk }) => desk.desk.getState().otherTab?.kind === 'parted')).toBe(true);
    expect(a.desk.desk.getState().chartId).not.toBe(b.desk.desk.getState().chartId);
  });

  it('do not touch each other’s shelf', async () => {
    const device = new DeviceStorage();
    const a = await page(device, 'a');
    const b = await page(device, 'b');
    a.desk.run({ kind: 'type', text: MINE });
    b.desk.run({ kind: 'type', text: chartText('High Water') });
    await Promise.all([a.settle(), b.settle()]);
    await Promise.all([a.settle(), b.settle()]);
    const { desk } = await page(device);
    expect(
      desk.desk
        .getState()
        .shelf.map(({ title }) => title)
        .sort(),
    ).toEqual(['High Water', 'Low Tide']);
  });
});
