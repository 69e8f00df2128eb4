/** A write that never ends, ends late, or fails late: charts open all the same, and the newest text is what is kept. */
import { describe, expect, it } from 'vitest';
import { PATIENCE_MS } from '../../src/state/patience';
import { chartText, DeviceStorage } from './desk-fixture';
import { latePage as page } from './late-page';

const MINE = chartText('Low Tide');

describe('A write that hangs from the start', () => {
  /** A page whose writes hang, with a chart typed into it. */
  async function typed() {
    const device = new DeviceStorage();
    device.hangs = (act) => act === 'write';
    const bench = page(device);
    expect(await bench.open(0)).toBe(true);
    bench.desk.run({ kind: 'type', text: MINE });
    await bench.pass(300);
    return { ...bench, device, chartId: bench.state().chartId };
  }

  it('keeps no chart from opening, and what was typed is there when its chart is opened again', async () => {
    const bench = await typed();
    bench.desk.run({ kind: 'open', chartId: 'demo-the-night-pilot' });
    await bench.pass(PATIENCE_MS);
    expect(bench.state()).toMatchObject({ chartId: 'demo-the-night-pilot', keeping: { kind: 'late' } });
    bench.desk.run({ kind: 'open', chartId: bench.chartId });
    await bench.pass(100);
    expect(bench.state().text).toBe(MINE);
  });

  it('is kept when it succeeds, the newest text last', async () => {
    const bench = await typed();
    bench.desk.run({ kind: 'type', text: `${MINE}; and on` });
    await bench.pass(300);
    await bench.pass(PATIENCE_MS);
    expect(bench.state().keeping.kind).toBe('late');
    bench.device.answer();
    await bench.pass(300);
    expect(bench.state().keeping.kind).toBe('kept');
    expect(bench.device.records.get(`chart/${bench.chartId}`)).toContain('; and on');
  });

  it('is tried again when it fails, the newest text alone', async () => {
    const bench = await typed();
    bench.desk.run({ kind: 'type', text: `${MINE}; and on` });
    await bench.pass(300);
    bench.device.refuses = () => true;
    bench.device.answer();
    await bench.pass(300);
    expect(bench.state()).toMatchObject({ text: `${MINE}; and on`, keeping: { kind: 'refused', reason: bench.device.reason } });
    bench.device.refuses = null;
    await bench.pass(10_000);
    expect(bench.state().keeping.kind).toBe('kept');
    expect(bench.device.records.get(`chart/${bench.chartId}`)).toContain('; and on');
  });
});
