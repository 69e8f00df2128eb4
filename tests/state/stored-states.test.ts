import { describe, expect, it } from 'vitest';
import { DeviceStorage, deskBench, turns } from './desk-fixture';

/**
 * What lay on players' devices, as earlier versions of the page wrote it. These texts are never changed: whoever opens the page with one of
 * them finds everything in its place.
 */
const FIRST_RELEASE: Readonly<Record<string, string>> = {
  desk: '{"record":"desk","version":1,"body":{"chartId":"4f0c2a7be1d84c5a9b3e6d70"}}',
  shelf:
    '{"record":"shelf","version":1,"body":{"entries":[{"id":"4f0c2a7be1d84c5a9b3e6d70","title":"Breakwater","changed":1763900000000},{"id":"b1946ac92492d2347c6235b4","title":"Untitled","changed":1763800000000}]}}',
  'chart/4f0c2a7be1d84c5a9b3e6d70':
    '{"record":"chart","version":1,"body":{"text":"title: Breakwater\\nkey: F\\nclave: 3-2 son\\ntempo: half = 90\\n\\n[A]\\n| Gm7 | C7 | F6 | D7 ||\\n","good":null}}',
  'chart/b1946ac92492d2347c6235b4': '{"record":"chart","version":1,"body":{"text":"[A]\\n| H7 | C7 |\\n","good":"[A]\\n| B7 | C7 |\\n"}}',
  'settings/4f0c2a7be1d84c5a9b3e6d70':
    '{"record":"settings","version":1,"body":{"tempo":72,"goalTempo":90,"direction":"3-2","kind":"son","level":3,"devices":["octave-up"],"hands":"wide","colour":"jazz","stretch":"octave","compass":88,"percussion":true,"transpose":2,"seed":1,"loop":{"fromBar":0,"toBar":2},"countInBars":2,"round":"round and round","pulse":"halves","view":"staff","balance":{"piano right":{"level":0.9,"muted":false},"bass":{"level":0.2,"muted":true}}}}',
  preferences:
    '{"record":"preferences","version":1,"body":{"theme":"night","tempoUnit":"quarter","shortcuts":false,"paper":"Letter","ceiling":0.5,"tuningCents":-20,"cautionSeen":true}}',
};

/** Later releases wrote more fields into the same records, and records of their own. */
const VOCABULARY_RELEASE: Readonly<Record<string, string>> = {
  ...FIRST_RELEASE,
  'settings/4f0c2a7be1d84c5a9b3e6d70':
    '{"record":"settings","version":1,"body":{"tempo":72,"goalTempo":90,"direction":"3-2","kind":"rumba","level":"by section","style":"songo","devices":[],"hands":"tenths","colour":"plain","stretch":"ninth","compass":61,"cells":null,"ownFigure":null,"crossed":false,"percussion":"by style","edits":[],"undoneEdits":[],"solo":null,"feel":"measured","transpose":0,"seed":0,"loop":null,"countInBars":1,"round":"round and round","pulse":"halves","view":"grid","balance":{}}}',
  habits: '{"record":"habits","version":1,"body":{"seen":["play"],"strip":false}}',
};

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
