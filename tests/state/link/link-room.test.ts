import { describe, expect, it } from 'vitest';
import { makeLink } from '../../../src/exchange/link/make-link';
import { chartText, DeviceStorage, deskBench } from '../desk-fixture';

const LOW = chartText('Low Tide');

async function page(device = new DeviceStorage(), ids = 'own') {
  const bench = deskBench({ device, ids });
  await bench.desk.restore();
  const room = await bench.desk.rooms.link();
  return { ...bench, room, state: () => bench.desk.desk.getState(), visit: () => room.store.getState().visit };
}

/** The part behind `#` of a teacher's link. */
async function teachers(note = 'Slowly; left hand first.\n\nThen both.') {
  const { desk, room, settle } = await page();
  desk.run({ kind: 'type', text: LOW });
  desk.run({ kind: 'set', settings: { level: 4, direction: '3-2', transpose: 2, hands: 'wide' } });
  await settle();
  const made = room.make(note, 'https://quay-street.example/app/#/chart');
  if (!('address' in made)) throw new Error(made.code);
  expect(made.address).toMatch(/^https:\/\/quay-street\.example\/app\/#l=1\./);
  return made.address.slice(made.address.indexOf('#'));
}

describe('A link from teacher to student', () => {
  it('shows what it holds and touches nothing until it is taken', async () => {
    const link = await teachers();
    const device = new DeviceStorage();
    const { room, visit, settle, state } = await page(device, 'student');
    await settle();
    const before = [...device.records];
    room.look(link);
    await settle();
    expect(visit()).toMatchObject({
      kind: 'offer',
      offer: { title: 'Low Tide', bars: 8, key: 'E', settings: { level: 4, direction: '3-2', hands: 'wide' } },
    });
    expect([...device.records]).toEqual(before);
    room.leave();
    await settle();
    expect([...device.records]).toEqual(before);
    expect(state().shelf).toEqual([]);
  });

  it('becomes a chart of the student’s own with its settings and the teacher’s words', async () => {
    const link = await teachers();
    const device = new DeviceStorage();
    const { desk, room, settle, state } = await page(device, 'student');
    room.look(link);
    room.take();
    await settle();
    await settle();
    expect(state().text).toBe(`; Slowly; left hand first.\n; Then both.\n${LOW}`);
    expect(state()).toMatchObject({
      chartId: 'student-1',
      faults: [],
      settings: { level: 4, direction: '3-2', transpose: 2, hands: 'wide' },
    });
    expect(state().shelf.map(({ title }) => title)).toEqual(['Low Tide']);
    const again = await page(device, 'again');
    expect(again.state().settings.level).toBe(4);
    expect(desk.desk.getState().preferences).toEqual(again.state().preferences);
  });

  it('with settings that cannot be, or a chart with faults, is offered with what is sound', async () => {
    const link = makeLink({ text: '[A]\n| H7 |\n', note: '', settings: { level: 99, tempo: -1, direction: 'up', transpose: 5 } });
    const { room, visit, settle, state } = await page();
    room.look(link.ok ? link.value : '');
    expect(visit()).toMatchObject({
      kind: 'offer',
      offer: { faults: 1, bars: null, settings: { level: 2, direction: '2-3', transpose: 5 } },
    });
    room.take();
    await settle();
    await settle();
    expect(state().text).toBe('[A]\n| H7 |\n');
    expect(state().faults).toHaveLength(1);
  });

  it('that is damaged says so; an address that is no link is left alone', async () => {
    const { room, visit } = await page();
    room.look('#/chart');
    expect(visit()).toEqual({ kind: 'none' });
    room.look('#l=1.AAAA');
    expect(visit()).toMatchObject({ kind: 'fault', fault: { code: 'damaged' } });
  });

  it('cannot be made of a chart that is too long, and says by how much', async () => {
    const { desk, room, settle } = await page();
    const bars = Array.from(
      { length: 3000 },
      (_, index) => `| ${'CDEFGAB'[(index * index * 5 + index) % 7]}m7 ; ${Math.imul(index, 2654435761) >>> 0}\n`,
    ).join('');
    desk.run({ kind: 'type', text: bars });
    await settle();
    expect(room.make('', 'https://quay-street.example/')).toMatchObject({ code: expect.stringMatching(/too/), found: expect.any(Number) });
  });
});
