/** The way of an assignment: set by a teacher, accepted by a student, worked on, handed back, read in a table. */
import { describe, expect, it } from 'vitest';
import type { Results } from '../../../src/exchange/assignment/assignment';
import type { Order } from '../../../src/state/assignment/assignment-state';
import { progressOf, rowOf } from '../../../src/state/assignment/progress';
import type { ListeningState } from '../../../src/state/listening/listening-state';
import { halfNotesPerMinute } from '../../../src/vocabulary';
import { FIRST_ASSIGNMENT } from '../../exchange/assignment/stored-assignments';
import { chartText, DeviceStorage, deskBench } from '../desk-fixture';

const LOW = chartText('Low Tide');
const ORDER = { bars: 'loop', passes: 2, drill: null, due: '2026-11-28', note: ' Slowly. ', goalTempo: 84 } as const;

async function page(ids: string, device = new DeviceStorage(), at = { now: 1_000 }) {
  const bench = deskBench({ device, ids, clock: () => at.now });
  await bench.desk.restore();
  const journal = await bench.desk.rooms.journal();
  const room = await journal.assignments();
  return { ...bench, at, journal, room, state: () => bench.desk.desk.getState(), seen: () => room.store.getState() };
}
type Page = Awaited<ReturnType<typeof page>>;

async function set(order: Partial<Order> = {}) {
  const teacher = await page('teacher');
  teacher.desk.run({ kind: 'type', text: LOW });
  teacher.desk.run({ kind: 'set', settings: { level: 4, direction: '3-2', transpose: 2, hands: 'right', tempo: halfNotesPerMinute(66) } });
  teacher.desk.run({ kind: 'loop bars', loop: { fromBar: 2, toBar: 4 } });
  await teacher.settle();
  teacher.room.make({ ...ORDER, ...order });
  const file = teacher.saved.at(-1);
  if (!file) throw new Error('nothing was saved');
  return { teacher, file };
}
async function rate({ journal }: Page, rating: 'clean' | 'nearly'): Promise<void> {
  await journal.hear(
    { report: null, ratings: [rating] } as unknown as ListeningState,
    { report: null, ratings: [] } as unknown as ListeningState,
  );
}
const records = ({ journal }: Page) => journal.store.getState().records.map(({ record }) => record);

describe('An assignment', () => {
  it('is shown first and touches nothing until it is accepted', async () => {
    const { file } = await set();
    expect(file.name).toBe('low-tide_bars-3-4.tarea.json');
    const device = new DeviceStorage();
    const student = await page('student', device);
    await student.settle();
    const before = [...device.records];
    student.room.give([file]);
    await student.settle();
    expect(student.seen().offer).toMatchObject({
      bars: 8,
      key: 'E',
      faults: 0,
      known: false,
      assignment: { title: 'Low Tide', note: 'Slowly.' },
    });
    student.room.leave();
    await student.settle();
    expect([...device.records]).toEqual(before);
    expect(student.state().shelf).toEqual([]);
  });

  it('comes by link too: shown first, nothing touched until it is accepted, a damaged one refused with its reason', async () => {
    const { teacher } = await set();
    const made = teacher.room.makeLink({ ...ORDER, passes: 4 }, 'https://montuno.example/#/journal');
    if ('found' in made) throw new Error(made.code);
    expect(made.address).toMatch(/^https:\/\/montuno\.example\/#t=1\.[\w-]+$/);
    expect(made.address.length).toBeLessThan(8192);
    expect(made.code?.path).toMatch(/^M/);
    const hash = made.address.slice(made.address.indexOf('#'));
    const device = new DeviceStorage();
    const student = await page('student', device);
    await student.settle();
    const before = [...device.records];
    student.room.look(`${hash.slice(0, -4)}AAAA`);
    expect(student.seen()).toMatchObject({ offer: null, refusedLink: { code: 'damaged' } });
    student.room.look(hash);
    await student.settle();
    expect(student.seen()).toMatchObject({ refusedLink: null, offer: { bars: 8, assignment: { title: 'Low Tide', passes: 4, level: 4 } } });
    expect([...device.records]).toEqual(before);
    await student.room.take();
    expect(student.seen().kept).toMatchObject([{ assignment: { loop: { fromBar: 2, toBar: 4 }, note: 'Slowly.' } }]);
  });

  it('goes on the shelf, opens as it was set, and counts the passes over its bars alone', async () => {
    const { file } = await set();
    const device = new DeviceStorage();
    const student = await page('student', device);
    student.room.give([file]);
    await student.room.take();
    await student.settle();
    const [kept] = student.seen().kept;
    if (!kept) throw new Error('nothing was kept');
    expect(student.state().shelf.map(({ title }) => title)).toEqual(['Low Tide']);
    await student.room.open(kept);
    await student.settle();
    expect(student.state()).toMatchObject({
      chartId: kept.chart,
      text: LOW,
      settings: { level: 4, direction: '3-2', transpose: 2, hands: 'right', tempo: 66, goalTempo: 84, loop: { fromBar: 2, toBar: 4 } },
    });
    student.at.now = 2_000;
    await rate(student, 'clean');
    student.desk.run({ kind: 'set', settings: { tempo: halfNotesPerMinute(84) } });
    await student.settle();
    await rate(student, 'clean');
    await rate(student, 'nearly');
    student.desk.run({ kind: 'loop bars', loop: { fromBar: 4, toBar: 6 } });
    await student.settle();
    await rate(student, 'clean');
    expect(progressOf(kept, records(student))).toEqual({ passes: 3, clean: 2, atGoal: 1, reached: 84, drills: 0, done: false });
    // Opened again, the tempo stays where the student has it.
    await student.room.open(kept);
    await student.settle();
    expect(student.state().settings).toMatchObject({ tempo: 84, loop: { fromBar: 2, toBar: 4 } });

    student.room.saveResults(kept, { who: ' Inés ', words: '' });
    const handed = student.saved.at(-1);
    if (!handed) throw new Error('nothing was handed back');
    expect(handed.name).toBe('ines_low-tide.resultado.json');
    const { teacher } = await set();
    teacher.room.give([handed, handed]);
    teacher.room.give([handed]);
    expect(teacher.seen().results).toHaveLength(1);
    const { results } = teacher.seen();
    const row = rowOf(results[0] as Results);
    expect(row).toMatchObject({
      passes: 3,
      clean: 2,
      atGoal: 1,
      reached: 84,
      rated: 3,
      shareRight: null,
      said: [{ kind: 'nearly', times: 1 }],
    });
    expect(results[0]).toMatchObject({ who: 'Inés', wanted: 2, goalTempo: 84, assignment: kept.assignment.id });
  });

  it('stays after a reload; put away it is marked, in every tab, and comes back with its passes', async () => {
    const { file } = await set();
    const device = new DeviceStorage();
    const student = await page('student', device);
    student.room.give([file]);
    await student.room.take();
    await student.settle();
    const again = await page('again', device);
    const [kept] = again.seen().kept;
    if (!kept) throw new Error('it was not kept');
    expect(kept).toEqual(student.seen().kept[0]);
    again.at.now = 9_000;
    again.room.putAway(kept);
    await again.settle();
    expect((await page('third', device)).seen().kept).toEqual([]);
    again.room.bringBack();
    again.room.give([file]);
    expect(again.seen().offer?.known).toBe(true);
    await again.room.take();
    await again.settle();
    expect((await page('fourth', device)).seen().kept).toMatchObject([{ chart: kept.chart, taken: kept.taken }]);
    expect(again.state().shelf).toHaveLength(1);
  });

  it('of a newer page is left alone, one that cannot be read is kept as it is', async () => {
    const { file } = await set();
    const device = new DeviceStorage();
    const newer = '{"record":"assignments","version":99,"body":{}}';
    device.records.set('assignments', newer);
    const student = await page('student', device);
    student.room.give([file]);
    await student.room.take();
    await student.settle();
    expect([student.seen().newer, device.records.get('assignments'), student.state().shelf]).toEqual([true, newer, []]);

    device.records.set('assignments', '{"record":"assignments","version":1,"body":{"list":[{"assignment":{"id":7}}]}}');
    const other = await page('other', device);
    other.room.give([file]);
    await other.room.take();
    await other.settle();
    expect(device.records.get('assignments')).toContain('{"assignment":{"id":7}}');
    expect((await page('next', device)).seen().kept).toHaveLength(1);
  });

  it('as the first version kept it is there again', async () => {
    const device = new DeviceStorage();
    const body = `{"list":[{"assignment":${FIRST_ASSIGNMENT},"chart":"c7","taken":5,"changed":6}]}`;
    device.records.set('assignments', `{"record":"assignments","version":1,"body":${body}}`);
    const { seen } = await page('student', device);
    expect(seen().kept).toMatchObject([{ chart: 'c7', taken: 5, assignment: { id: 'a1', title: 'Low Tide', passes: 3 } }]);
  });

  it('accepted by file and by link is one, with one chart', async () => {
    const { teacher, file } = await set();
    const made = teacher.room.makeLink(ORDER, 'https://montuno.example/');
    if ('found' in made) throw new Error(made.code);
    const student = await page('student');
    student.room.give([file]);
    await student.room.take();
    student.at.now = 3_000;
    student.room.look(made.address.slice(made.address.indexOf('#')));
    expect(student.seen().offer?.known).toBe(true);
    await student.room.take();
    await student.settle();
    expect(student.seen().kept).toMatchObject([{ taken: 1_000, changed: 3_000 }]);
    expect(student.state().shelf).toHaveLength(1);
    // What asks for something else is another.
    student.room.give([(await set({ due: null })).file]);
    expect(student.seen().offer?.known).toBe(false);
  });

  it('whose bars are not in its chart is refused with the bars there are', async () => {
    const { file } = await set();
    const text = new TextDecoder().decode(file.bytes).replace('"toBar": 4', '"toBar": 400');
    const student = await page('student');
    student.room.give([{ name: 'x.tarea.json', bytes: new TextEncoder().encode(text) }]);
    expect(student.seen().offer).toBeNull();
    expect(student.seen().refused).toMatchObject([
      { name: 'x.tarea.json', faults: [{ path: 'loop.toBar', found: '400', expected: { high: 8 } }] },
    ]);
  });
});
