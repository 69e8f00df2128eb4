import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BACKUP_VERSION, type Backup, writeBackup } from '../../../src/exchange/backup/backup';
import { mergeWrites, planMerge } from '../../../src/exchange/backup/merge';
import { readBackup } from '../../../src/exchange/backup/read-backup';

const id = fc.stringMatching(/^[a-z0-9]{1,12}$/);
const unique = <Item extends { readonly id: string }>(item: fc.Arbitrary<Item>) =>
  fc.uniqueArray(item, { selector: (one) => one.id, maxLength: 6 });
const record = fc.record({ version: fc.nat(9), body: fc.jsonValue() }).map((one) => JSON.stringify({ record: 'settings', ...one }));
const backups: fc.Arbitrary<Backup> = fc.record({
  made: fc.constant('2026-11-25T18:00:00.000Z'),
  charts: unique(
    fc.record({
      id,
      title: fc.string(),
      changed: fc.nat(),
      text: fc.string({ unit: 'grapheme' }),
      good: fc.option(fc.string(), { nil: null }),
      settings: fc.option(record, { nil: null }),
    }),
  ),
  sets: unique(
    fc.record({
      id,
      name: fc.string(),
      date: fc.constantFrom(null, '2026-11-28'),
      charts: fc.array(id, { maxLength: 3 }),
      changed: fc.nat(),
    }),
  ),
  journal: unique(fc.record({ id, at: fc.nat(), text: fc.string() })),
  records: fc.dictionary(fc.constantFrom('preferences', 'habits', 'settings/demo-last-ferry'), record),
});
const read = (text: string) => {
  const result = readBackup(text);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
};

describe('A backup', () => {
  it('comes back whole, and written again gives the same bytes', () => {
    fc.assert(
      fc.property(backups, (backup) => {
        const text = writeBackup(backup);
        const { backup: again, leftOut } = read(text);
        expect(leftOut).toEqual([]);
        expect(writeBackup(again)).toBe(text);
        expect(again.charts).toHaveLength(backup.charts.length);
      }),
    );
  });

  it('of version 1 is read for as long as the program lives', () => {
    // Typed by hand, as version 1 wrote it: this text is never changed.
    const written = `{"contratiempo":"backup","version":1,"made":"2026-11-25T18:00:00.000Z",
      "charts":[{"id":"a1","title":"Low Tide","changed":5,"text":"title: Low Tide\\n| C | G7 |\\n","good":null,"settings":"{\\"record\\":\\"settings\\",\\"version\\":1,\\"body\\":{\\"level\\":3}}"}],
      "sets":[{"id":"s1","name":"Saturday","date":"2026-11-28","charts":["a1"],"changed":6}],
      "journal":[{"id":"j1","at":7,"text":"{}"}],
      "records":{"preferences":"{\\"record\\":\\"preferences\\",\\"version\\":1,\\"body\\":{}}"}}`;
    const { backup, leftOut } = read(written);
    expect(leftOut).toEqual([]);
    expect(backup.charts[0]).toMatchObject({ title: 'Low Tide', text: 'title: Low Tide\n| C | G7 |\n' });
    expect(backup.sets[0]).toMatchObject({ name: 'Saturday', date: '2026-11-28' });
    expect(backup.journal).toHaveLength(1);
    expect(Object.keys(backup.records)).toEqual(['preferences']);
  });

  it('of a later version, of another kind, cut short or no text at all is refused with one fault', () => {
    const whole = writeBackup({ made: '', charts: [], sets: [], journal: [], records: {} });
    for (const [text, code] of [
      ['', 'no json'],
      [whole.slice(0, -5), 'no json'],
      ['[]', 'no backup'],
      ['{"contratiempo":"backup"}', 'no backup'],
      ['{"version":1}', 'no backup'],
      [whole.replace(`"version": ${BACKUP_VERSION}`, `"version": ${BACKUP_VERSION + 1}`), 'newer version'],
    ] as const)
      expect(readBackup(text), text).toMatchObject({ ok: false, faults: [{ code }] });
  });

  it('with bad items leaves these out, says where they stand, and brings the others', () => {
    const chart = { id: 'a', title: 'A', changed: 1, text: 'x', good: null, settings: null };
    const text = JSON.stringify({
      contratiempo: 'backup',
      version: 1,
      made: 'yesterday',
      charts: [chart, { ...chart, id: 'b', text: 7 }, chart, null, { ...chart, id: 'c', text: 'y'.repeat(262_145) }],
      sets: 'none',
      journal: [{ id: 'j', at: -1, text: '' }],
      records: { preferences: 'garbage', shelf: '{"record":"shelf","version":1}', 'chart/a': '{"record":"chart","version":1}' },
    });
    const { backup, leftOut } = read(text);
    expect(backup.charts.map((one) => one.id)).toEqual(['a']);
    expect(leftOut.map(({ code, path }) => `${code} ${path}`)).toEqual([
      'bad chart charts[1].text',
      'id twice charts[2].id',
      'bad chart charts[3].id',
      'bad chart charts[4].text',
      'no list sets',
      'bad entry journal[0].at',
      'bad record records.preferences',
      'bad record records.shelf',
      'bad record records.chart/a',
    ]);
  });

  it('never throws, whatever a file holds', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), fc.anything(), (text, value) => {
        readBackup(text);
        let json = '';
        try {
          json = JSON.stringify({ contratiempo: 'backup', version: 1, charts: [value], sets: value, journal: [value], records: value });
        } catch {
          return;
        }
        readBackup(json);
      }),
    );
  });

  it('cannot reach into objects by names such as __proto__', () => {
    const text =
      '{"contratiempo":"backup","version":1,"charts":[],"sets":[],"journal":[],"records":{"__proto__":"{\\"record\\":\\"x\\",\\"version\\":1}"}}';
    const { backup } = read(text);
    expect(Object.getPrototypeOf(backup.records)).toBe(Object.prototype);
    expect(Object.keys(backup.records)).toEqual([]);
  });
});

describe('A merge', () => {
  const chart = (name: string, text: string, changed = 1) => ({ id: name, title: name, changed, text, good: null, settings: null });
  const holding = (...charts: Backup['charts']): Backup => ({ made: '', charts, sets: [], journal: [], records: {} });

  it('tells new, same and different charts apart', () => {
    const mine = holding(chart('a', 'same'), chart('b', 'mine'));
    const file = holding(chart('x', 'same'), chart('b', 'file'), chart('c', 'new'));
    const plan = planMerge(mine, file);
    expect(plan.newCharts.map(({ id: name }) => name)).toEqual(['c']);
    expect(plan.sameCharts.map(({ id: name }) => name)).toEqual(['x']);
    expect(plan.differentCharts.map((one) => [one.mine.text, one.file.text])).toEqual([['mine', 'file']]);
  });

  it('loses no text of either side when both are kept, and brings nothing the second time', () => {
    fc.assert(
      fc.property(backups, backups, (mine, file) => {
        let ids = 0;
        const newId = () => {
          ids += 1;
          return `new-${ids}`;
        };
        const writes = mergeWrites(planMerge(mine, file), file, { onDifference: 'keep both', withSettings: false }, newId);
        const after = new Map([...mine.charts, ...writes.charts].map((one) => [one.id, one]));
        const texts = [...after.values()].map(({ text }) => text);
        for (const { text } of [...mine.charts, ...file.charts]) expect(texts).toContain(text);
        const again = planMerge({ ...mine, charts: [...after.values()] }, file);
        expect([again.newCharts, again.differentCharts]).toEqual([[], []]);
      }),
    );
  });

  it('takes settings over only when asked to', () => {
    const mine: Backup = { ...holding(), records: { preferences: 'a' } };
    const file: Backup = { ...holding(), records: { preferences: 'b', habits: 'c' } };
    const plan = planMerge(mine, file);
    const write = (withSettings: boolean) => mergeWrites(plan, file, { onDifference: 'keep both', withSettings }, () => 'x').records;
    expect(write(false)).toEqual({});
    expect(write(true)).toEqual({ preferences: 'b', habits: 'c' });
  });
});
