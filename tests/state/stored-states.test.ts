import { describe, expect, it } from 'vitest';
import { DeviceStorage, deskBench, turns } from './desk-fixture';
import { FIRST_RELEASE, VOCABULARY_RELEASE } from './stored-releases';

async function opened(stored: Readonly<Record<string, string>>) {
  const device = new DeviceStorage();
  for (const [key, text] of Object.entries(stored)) device.records.set(key, text);
  const bench = deskBench({ device });
  await bench.desk.restore();
  const library = await bench.desk.rooms.library();
  await bench.settle();
  await turns();
  return { ...bench, library, state: () => bench.desk.desk.getState() };
}

describe('What earlier versions stored', () => {
  it('of the first release opens with its charts, its settings and its preferences', async () => {
    const { state, library, desk, settle } = await opened(FIRST_RELEASE);
    expect(state()).toMatchObject({
      chartId: '4f0c2a7be1d84c5a9b3e6d70',
      settings: {
        tempo: 72,
        direction: '3-2',
        level: 3,
        hands: 'wide',
        transpose: 2,
        view: 'staff',
        loop: { fromBar: 0, toBar: 2 },
        edits: [],
      },
      preferences: { theme: 'night', tempoUnit: 'quarter', shortcuts: false, paper: 'Letter', ceiling: 0.5, tuningCents: -20 },
    });
    expect(state().text).toContain('Breakwater');
    expect(library.search('').map(({ title }) => title)).toEqual(['Breakwater', 'Untitled']);
    desk.run({ kind: 'open', chartId: 'b1946ac92492d2347c6235b4' });
    await settle();
    expect(state().text).toBe('[A]\n| H7 | C7 |\n');
    expect(state().faults).toHaveLength(1);
    expect(state().music?.whole.bars).toHaveLength(2);
  });

  it('of the release with the whole vocabulary opens as it was left', async () => {
    const { state } = await opened(VOCABULARY_RELEASE);
    expect(state().settings).toMatchObject({
      kind: 'rumba',
      level: 'by section',
      style: 'songo',
      stretch: 'ninth',
      compass: 61,
      feel: 'measured',
    });
  });

  it('is left untouched by looking at it: nothing is put aside, and no record of it is lost', async () => {
    for (const stored of [FIRST_RELEASE, VOCABULARY_RELEASE]) {
      const { device, state } = await opened(stored);
      expect(state().putAside).toEqual([]);
      for (const [key, text] of Object.entries(stored))
        if (key.startsWith('chart/') || key === 'habits') expect(device.records.get(key), key).toBe(text);
    }
  });

  it('goes into a backup whole', async () => {
    const { desk } = await opened(VOCABULARY_RELEASE);
    const safety = await desk.rooms.safety();
    expect(await safety.counts()).toEqual({ charts: 2, sets: 0, entries: 0 });
  });
});
