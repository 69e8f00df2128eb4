/** A newer version of the page has written here: it is said, nothing is written over it, and what was made here can be taken out as a backup. */
import { describe, expect, it } from 'vitest';
import { NEWER } from '../../src/device/refusal';
import { readBackup } from '../../src/exchange/backup/read-backup';
import { razon } from '../../src/words/spanish/reasons';
import { chartText, DeviceStorage, deskBench, turns } from './desk-fixture';

const MINE = chartText('Low Tide');

async function kept(): Promise<DeviceStorage> {
  const device = new DeviceStorage();
  const { desk, settle } = deskBench({ device });
  await desk.restore();
  desk.run({ kind: 'type', text: chartText('High Water') });
  await settle();
  return device;
}

const keys = (device: DeviceStorage): readonly (readonly [string, string])[] => [...device.records].sort();

describe('A page of an older version', () => {
  it('that is opened says so, plays, and writes nothing over what the newer one has written', async () => {
    const device = await kept();
    const before = keys(device);
    device.becomeNewer();
    const { desk, settle, timer } = deskBench({ device, ids: 'older' });
    await desk.restore();
    expect(desk.desk.getState()).toMatchObject({ keeping: { kind: 'newer' } });
    expect(desk.desk.getState().music).not.toBeNull();
    desk.run({ kind: 'prefer', preferences: { theme: 'night' } });
    desk.run({ kind: 'type', text: MINE });
    await settle();
    timer.pass(60_000);
    await turns();
    expect(desk.desk.getState()).toMatchObject({ keeping: { kind: 'newer' }, text: MINE });
    expect(keys(device)).toEqual(before);
  });

  it('that is open when the newer one comes says so, and loses nothing of what lies in it', async () => {
    const device = await kept();
    const { desk, settle } = deskBench({ device, ids: 'older' });
    await desk.restore();
    const before = keys(device);
    device.becomeNewer();
    expect(desk.desk.getState().keeping).toEqual({ kind: 'newer' });
    desk.run({ kind: 'new chart' });
    desk.run({ kind: 'type', text: MINE });
    const { chartId } = desk.desk.getState();
    await settle();
    desk.run({ kind: 'open', chartId: 'demo-the-night-pilot' });
    await settle();
    desk.run({ kind: 'open', chartId });
    await settle();
    expect(desk.desk.getState()).toMatchObject({ text: MINE, keeping: { kind: 'newer' } });
    expect(keys(device)).toEqual(before);
  });

  it('hands what was made in it out as a backup, which is read again', async () => {
    const device = await kept();
    device.becomeNewer();
    const { desk, settle, saved } = deskBench({ device, ids: 'older' });
    await desk.restore();
    desk.run({ kind: 'type', text: MINE });
    desk.run({ kind: 'set', settings: { level: 5 } });
    desk.run({ kind: 'prefer', preferences: { theme: 'night' } });
    await settle();
    const safety = await desk.rooms.safety();
    await safety.saveBackup();
    const backup = readBackup(new TextDecoder().decode(saved[0]?.bytes));
    if (!backup.ok) throw new Error('the backup must be read again');
    expect(backup.value.backup.charts).toMatchObject([{ title: 'Low Tide', text: MINE }]);
    expect(backup.value.backup.charts[0]?.settings).toContain('"level":5');
    expect(backup.value.backup.records.preferences).toContain('night');
  });
});

describe('A backup', () => {
  it('holds what a full device refused', async () => {
    const device = await kept();
    const { desk, settle, saved } = deskBench({ device, ids: 'later' });
    await desk.restore();
    device.refuses = () => true;
    desk.run({ kind: 'new chart' });
    desk.run({ kind: 'type', text: MINE });
    await settle();
    const safety = await desk.rooms.safety();
    await safety.saveBackup();
    const backup = readBackup(new TextDecoder().decode(saved[0]?.bytes));
    expect(backup.ok && backup.value.backup.charts.map(({ title }) => title).sort()).toEqual(['High Water', 'Low Tide']);
  });
});

describe('A reason of refusal', () => {
  it.each([new DeviceStorage().reason, NEWER, 'everything was deleted in another tab', 'the device has not answered yet'])(
    '“%s” has its Spanish',
    (reason) => {
      expect(razon(reason)).not.toBe(reason);
    },
  );
  it('of the browser’s own stays as the browser said it', () => {
    expect(razon('Access is denied for this document.')).toBe('Access is denied for this document.');
  });
});
