/** The journal over a desk: what becomes a record, what comes back when, what a set asks of the hand. */
import { describe, expect, it } from 'vitest';
import { byDay } from '../../../src/state/journal/by-day';
import { sessionItems } from '../../../src/state/journal/session-items';
import type { ListeningState, PassReport } from '../../../src/state/listening/listening-state';
import { DeviceStorage, deskBench, turns } from '../desk-fixture';

const DAY = 86_400_000;
const UTC = () => 0;
const OLD = JSON.stringify({
  ...{ version: 1, kind: 'pass', at: 3, chart: 'demo-last-ferry', title: 'Last Ferry', fromBar: 0, toBar: 4, tempo: 60, level: 2 },
  ...{ direction: '2-3', clean: true, shareRight: 1, offsetMs: null, spreadMs: 12, stepsMs: [], findings: [], source: 'midi' },
});
const NOTHING = { report: null, ratings: [], source: 'midi' } as unknown as ListeningState;

async function open(device = new DeviceStorage(), at = { now: 200 * DAY }) {
  const bench = deskBench({ device, clock: () => at.now });
  await bench.desk.restore();
  const journal = await bench.desk.rooms.journal();
  return { ...bench, device, at, journal, state: journal.store.getState };
}

type Bench = Awaited<ReturnType<typeof open>>;

/** A report on a part of the pass in force, from `from` to `to` as shares of it. */
function report({ desk }: Bench, from: number, to: number, clean: boolean): PassReport {
  const { music } = desk.desk.getState();
  if (!music) throw new Error('no music');
  const { performance, score } = music;
  const length = performance.toTick - performance.fromTick;
  return {
    id: 1,
    take: {
      music: { performance, startTick: performance.fromTick, early: 0, fromPlay: 0 },
      score,
      fromPlayTick: from * length,
      toPlayTick: to * length,
      timing: 'uncalibrated',
    },
    matched: { offsetMs: 7, spreadMs: 9 },
    assessment: {
      clean,
      shareRight: clean ? 1 : 0.5,
      timing: 'in time',
      steps: [{ cycleStep: 0, asked: 4, played: 4, missed: 0, extra: 0, meanMs: 5, spreadMs: 2 }],
      findings: clean ? [] : [{ facts: { kind: 'late chords' } }],
    },
    pass: 0,
    wholePass: from === 0 && to === 1,
    interrupted: null,
  } as unknown as PassReport;
}
const hear = ({ journal }: Bench, one: PassReport) => journal.hear({ ...NOTHING, report: one }, NOTHING);

describe('What is written down', () => {
  it('is a judged whole pass, with chart, bars, tempo and what was said; an offset only of a measured device', async () => {
    const bench = await open();
    bench.desk.run({ kind: 'loop cycle', bar: 2 });
    await hear(bench, report(bench, 0, 1, false));
    const { loop } = bench.desk.desk.getState().settings;
    expect(bench.state().records.map(({ record }) => record)).toMatchObject([
      {
        kind: 'pass',
        chart: 'demo-last-ferry',
        title: 'Last Ferry',
        fromBar: loop?.fromBar,
        toBar: loop?.toBar,
        clean: false,
        shareRight: 0.5,
        findings: ['late chords'],
        offsetMs: null,
        spreadMs: 9,
        stepsMs: [5],
        source: 'midi',
      },
    ]);
    expect(bench.device.entries.size).toBe(1);
  });

  it('is one record of a long pass that was judged in pieces, and none of one that was joined on the way', async () => {
    const bench = await open();
    await hear(bench, report(bench, 0.5, 1, true));
    expect(bench.state().records).toEqual([]);
    await hear(bench, report(bench, 0, 0.5, true));
    expect(bench.state().records).toEqual([]);
    await hear(bench, report(bench, 0.5, 1, false));
    expect(bench.state().records.map(({ record }) => record)).toMatchObject([{ clean: false, shareRight: 0.75, stepsMs: [5] }]);
  });

  it('is nothing when the pass was interrupted', async () => {
    const bench = await open();
    await hear(bench, { ...report(bench, 0, 1, true), interrupted: 'clock jumped' });
    expect(bench.state().records).toEqual([]);
  });

  it('is a pass rated by ear, and the first try of the next day as a check', async () => {
    const bench = await open();
    await bench.journal.hear({ ...NOTHING, ratings: ['clean'] }, NOTHING);
    await bench.journal.hear({ ...NOTHING, ratings: ['clean', 'nearly'] }, { ...NOTHING, ratings: ['clean'] });
    bench.at.now += DAY;
    await bench.journal.hear({ ...NOTHING, ratings: ['nearly'] }, NOTHING);
    await bench.journal.hear({ ...NOTHING, ratings: ['clean'] }, NOTHING);
    const records = bench.state().records.map(({ record }) => record);
    expect(records.map(({ kind }) => kind)).toEqual(['pass', 'pass', 'pass', 'check', 'pass']);
    expect(records[3]).toMatchObject({ result: 'shaky', daysSince: 1 });
    expect(records[0]).toMatchObject({ source: 'own rating', shareRight: null, fromBar: 0 });
  });

  it('is not lost when it comes while another is being kept and is refused itself', async () => {
    const bench = await open();
    const opened: (() => void)[] = [];
    bench.device.journalGate = () => new Promise((resolve) => opened.push(resolve));
    let writes = 0;
    bench.device.refuses = (key) => key === 'journal' && ++writes === 2;
    const first = bench.journal.note('the first');
    await turns();
    const second = bench.journal.note('the second');
    await turns();
    bench.device.journalGate = null;
    for (const go of opened) go();
    await Promise.all([first, second]);
    expect([...bench.device.entries.values()].map(({ text }) => /the \w+/.exec(text)?.[0])).toEqual(['the first']);
    expect(bench.desk.desk.getState().unwritten).toBe(bench.device.reason);
    await bench.journal.note('the third');
    expect([...bench.device.entries.values()].map(({ text }) => /the \w+/.exec(text)?.[0])).toEqual([
      'the first',
      'the second',
      'the third',
    ]);
    expect(bench.desk.desk.getState().unwritten).toBeNull();
    expect(bench.state().refused).toBeNull();
  });

  it('stays in sight when the device refuses it, with the reason, and is kept as soon as it can be', async () => {
    const bench = await open();
    bench.device.refuses = () => true;
    await hear(bench, report(bench, 0, 1, true));
    expect(bench.state().records).toHaveLength(1);
    expect(bench.state().refused).toBe(bench.device.reason);
    await bench.journal.meet();
    expect(bench.state().records, 'entering the place loses nothing').toHaveLength(1);
    expect(bench.state().refused).toBe(bench.device.reason);
    bench.device.refuses = null;
    await bench.journal.note('and now it does');
    expect(bench.device.entries.size).toBe(2);
    expect(bench.state().refused).toBeNull();
  });

  it('writes down a drill with the chart on the desk, for the log and the table', async () => {
    const bench = await open();
    await bench.journal.drill('lost and found', 2, 3, 41);
    expect(bench.state().records.at(-1)?.record).toMatchObject({
      kind: 'drill',
      drill: 'lost and found',
      seed: 41,
      right: 2,
      of: 3,
      title: 'Last Ferry',
    });
    const [today] = byDay(bench.state().records, bench.journal.zone);
    expect(today?.others.map(({ record }) => record.kind)).toEqual(['drill']);
  });

  it('is taken out and brought back as it was', async () => {
    const bench = await open();
    await hear(bench, report(bench, 0, 1, true));
    await bench.journal.note('  Thumb under at bar 3 ');
    const before = bench.state().records;
    await bench.journal.remove([before[0]?.id ?? '']);
    expect(bench.device.entries.size).toBe(1);
    await bench.journal.undoRemoval();
    expect(bench.state().records).toHaveLength(2);
    expect(new Set(bench.state().records.map(({ record }) => record))).toEqual(new Set(before.map(({ record }) => record)));
    expect(bench.state().records.find(({ record }) => record.kind === 'note')?.record).toMatchObject({ text: 'Thumb under at bar 3' });
  });

  it('of a newer page, or that cannot be read, is counted and left untouched', async () => {
    const device = new DeviceStorage();
    const entries = [
      { id: 'a', at: 1, text: JSON.stringify({ version: 99, kind: 'hologram' }) },
      { id: 'b', at: 2, text: 'garbage' },
      { id: 'c', at: 3, text: OLD },
    ];
    for (const entry of entries) device.entries.set(entry.id, entry);
    const bench = await open(device);
    expect(bench.state()).toMatchObject({ newer: 1, unread: 1, records: [{ id: 'c' }] });
    await bench.journal.note('one more');
    for (const entry of entries) expect(device.entries.get(entry.id)).toEqual(entry);
  });

  it('is handed out as a table under the words of the page', async () => {
    const bench = await open();
    await hear(bench, report(bench, 0, 1, true));
    bench.journal.saveCsv();
    const [file] = bench.saved;
    expect(file?.name).toBe('contratiempo-journal.csv');
    const lines = new TextDecoder().decode(file?.bytes).split('\r\n');
    expect(lines[0]).toContain('when (UTC),what,chart,bars,half notes a minute');
    expect(lines[1]).toContain('pass,Last Ferry');
  });
});

describe('Five charts, two evenings', () => {
  it('counts the moves of a set, ticks them off for good, names charts with faults and loops the bars of a move', async () => {
    const bench = await open();
    const library = await bench.desk.rooms.library();
    const faulty = library.add('title: Broken\n| H7 |\n');
    const id = library.addSet('Saturday');
    library.changeSet(id, { charts: ['demo-last-ferry', 'demo-the-night-pilot', faulty, 'gone'] });
    const set = library.store.getState().sets[0];
    if (!set) throw new Error('no set');
    await bench.journal.studySet(set);
    const plan = bench.state().study?.plan;
    expect(bench.state().study?.unread).toEqual(['Broken', 'gone']);
    expect(plan?.moves.length).toBeGreaterThan(3);
    const next = plan?.next[0]?.move;
    if (!plan || !next) throw new Error('no move');
    expect(sessionItems(bench.state(), [], () => 'T', 200, UTC)[0]).toMatchObject({ chart: next.first.chart, title: 'T' });
    bench.journal.tick(next.key, true);
    expect(bench.state().study?.plan.known).toBe(1);
    expect(bench.state().study?.plan.next.map(({ move }) => move.key)).not.toContain(next.key);
    await bench.settle();
    const later = await open(bench.device);
    expect(later.state().known).toEqual(new Set([next.key]));
    const other = plan.moves.find(({ first }) => first.chart === 'demo-the-night-pilot' && first.bar > 0);
    if (!other) throw new Error('no move of the second chart');
    bench.journal.drillMove(other);
    await bench.settle();
    const { chartId, settings } = bench.desk.desk.getState();
    expect(chartId).toBe('demo-the-night-pilot');
    expect(settings.loop?.fromBar).toBeLessThan(other.first.bar);
    expect(settings.loop?.toBar).toBeGreaterThan(other.first.bar);
  });
});
