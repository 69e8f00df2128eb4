/** A journal that the device does not hand out: its place opens all the same, and nothing that is said meanwhile is lost or kept twice. The clock is turned by hand. */
import { describe, expect, it } from 'vitest';
import type { ListeningState } from '../../../src/state/listening/listening-state';
import { PATIENCE_MS } from '../../../src/state/patience';
import { DeviceStorage } from '../desk-fixture';
import { latePage } from '../late-page';

const NOTHING = { report: null, ratings: [], source: 'midi' } as unknown as ListeningState;
const CLEAN: ListeningState = { ...NOTHING, ratings: ['clean'] };

/** A device with one note of before, whose journal answers nobody until `answer()`. */
async function held() {
  const device = new DeviceStorage();
  const before = latePage(device);
  await before.open(0);
  await (await before.desk.rooms.journal()).note('of the day before');
  device.hangs = (_, key) => key === 'journal';
  const bench = latePage(device, 'later');
  await bench.open(0);
  const opening = bench.desk.rooms.journal();
  return { ...bench, device, opening, kinds: () => [...device.entries.values()].map(({ text }) => JSON.parse(text).kind) };
}

describe('A journal that is held', () => {
  it('opens after two seconds, empty, and has what was kept when the device answers', async () => {
    const { opening, pass, device, state } = await held();
    let stands = false;
    void opening.then(() => {
      stands = true;
    });
    await pass(PATIENCE_MS - 1);
    expect(stands).toBe(false);
    await pass(1);
    expect(stands).toBe(true);
    const { store } = await opening;
    expect(store.getState()).toMatchObject({ loaded: false, records: [] });
    expect(state().keeping.kind).toBe('late');
    device.answer();
    await pass(0);
    expect(store.getState()).toMatchObject({ loaded: true, records: [{ record: { kind: 'note', text: 'of the day before' } }] });
    expect(state().keeping.kind).toBe('kept');
  });

  it('shows what is rated meanwhile, and keeps it once, after what was kept before', async () => {
    const { opening, pass, device, kinds } = await held();
    await pass(PATIENCE_MS);
    const journal = await opening;
    void journal.hear(CLEAN, NOTHING);
    await pass(0);
    expect(journal.store.getState().records.map(({ record }) => record.kind)).toEqual(['pass']);
    expect(kinds()).toEqual(['note']);
    device.answer();
    await pass(0);
    expect(journal.store.getState().records.map(({ record }) => record.kind)).toEqual(['note', 'pass']);
    expect(kinds()).toEqual(['note', 'pass']);
    await journal.meet();
    expect(journal.store.getState().records).toHaveLength(2);
  });

  it('is no refusal: nothing is said against a device that was late but gave everything', async () => {
    const { opening, pass, device, state } = await held();
    await pass(PATIENCE_MS);
    await opening;
    device.answer();
    await pass(0);
    expect((await opening).store.getState().refused).toBeNull();
    expect(state().unwritten).toBeNull();
  });
});
