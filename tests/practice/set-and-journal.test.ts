import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO_BOOK } from '../../src/music/chart/demo-book';
import { arrange } from '../../src/music/score';
import { type JournalRecord, readRecord, summaryOf, writeRecord } from '../../src/practice/journal';
import { JOURNAL_COLUMNS, type JournalColumn, journalCsv } from '../../src/practice/journal-csv';
import { planSet } from '../../src/practice/set-planner';
import { chartOf } from '../music/chart/chart-of';
import { CHARTS } from './synthetic';

const scoreOf = (text: string) => arrange(chartOf(text), { level: 2 });

describe('the set planner', () => {
  test('merges the moves of a whole set, counts them, and orders them by what they unlock', () => {
    const charts = DEMO_BOOK.map(({ id, text }) => ({ id, score: scoreOf(text) }));
    const plan = planSet(charts, new Set());
    const { bars, moves, next, most } = plan;
    expect(bars).toBe(charts.reduce((sum, { score }) => sum + score.bars.length, 0));
    expect(new Set(moves.map(({ key }) => key)).size).toBe(moves.length);
    expect(next.map(({ move }) => move.key).sort()).toEqual(moves.map(({ key }) => key).sort());
    expect(next.at(-1)?.covered).toBe(1);
    for (const [index, { covered }] of next.entries()) expect(covered).toBeGreaterThanOrEqual(next[index - 1]?.covered ?? plan.covered);
    expect(moves.some(({ count }) => count > 1)).toBe(true);
    console.log(`set planner: the demo book's ${bars} bars use ${moves.length} moves; ${most} of them cover four bars in five`);
    expect(most).toBeLessThan(moves.length);
  });

  test('what is known is counted and asked for no more; knowing everything leaves nothing', () => {
    const charts = [
      { id: 'a', score: scoreOf(CHARTS.vamp) },
      { id: 'b', score: scoreOf(CHARTS.minor) },
    ];
    const all = planSet(charts, new Set());
    fc.assert(
      fc.property(fc.subarray(all.moves.map(({ key }) => key)), (known) => {
        const plan = planSet(charts, new Set(known));
        expect(plan.known).toBe(known.length);
        expect(plan.next).toHaveLength(all.moves.length - known.length);
        expect(plan.covered).toBeGreaterThanOrEqual(all.covered);
        const learned = planSet(charts, new Set([...known, plan.next[0]?.move.key ?? '']));
        if (plan.next.length > 0) expect(learned.covered).toBeCloseTo(plan.next[0]?.covered ?? 0, 9);
      }),
    );
    expect(planSet(charts, new Set(all.moves.map(({ key }) => key)))).toMatchObject({ next: [], covered: 1, most: 0 });
    expect(planSet([], new Set())).toMatchObject({ bars: 0, moves: [], next: [], covered: 1 });
  });

  test('the same chart twice in a set adds bars, not moves', () => {
    const score = scoreOf(CHARTS.minor);
    const once = planSet([{ id: 'a', score }], new Set());
    const twice = planSet(
      [
        { id: 'a', score },
        { id: 'b', score },
      ],
      new Set(),
    );
    expect(twice.bars).toBe(2 * once.bars);
    expect(twice.moves).toHaveLength(once.moves.length);
    expect(twice.moves[0]?.charts).toEqual(['a', 'b']);
  });
});

const PASS: JournalRecord = {
  kind: 'pass',
  at: Date.UTC(2026, 10, 25, 18, 0),
  chart: 'last-ferry',
  title: 'Last Ferry',
  fromBar: 0,
  toBar: 4,
  tempo: 72,
  level: 2,
  direction: '2-3',
  clean: true,
  shareRight: 0.9725,
  offsetMs: -11.26,
  spreadMs: 18.04,
  stepsMs: [null, 2.5],
  findings: ['late chords'],
  source: 'midi',
};
const NOTE: JournalRecord = { kind: 'note', at: 5, chart: '', title: '=SUM(A1)', text: 'Left hand, "softly",\nagain' };

describe('the journal', () => {
  test('records come back as they were written', () => {
    const about = { at: fc.nat(), chart: fc.string(), title: fc.string() };
    const record = fc.oneof(
      fc.record({ kind: fc.constant('note' as const), ...about, text: fc.string() }),
      fc.record({
        kind: fc.constant('drill' as const),
        ...about,
        drill: fc.string(),
        seed: fc.option(fc.nat()),
        right: fc.nat(),
        of: fc.nat(),
      }),
      fc.record({
        kind: fc.constant('check' as const),
        ...about,
        item: fc.string(),
        result: fc.constantFrom('clean' as const, 'shaky' as const, 'lost' as const),
        daysSince: fc.nat(),
      }),
    );
    fc.assert(
      fc.property(record, (written) => {
        expect(readRecord(writeRecord(written))).toEqual({ ok: true, value: written });
      }),
    );
    expect(readRecord(writeRecord(PASS))).toEqual({ ok: true, value: PASS });
  });

  test('a newer version, damage and other text are faults, never an exception', () => {
    expect(readRecord('{"version":2,"kind":"pass"}')).toMatchObject({ ok: false, faults: [{ code: 'newer version' }] });
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(readRecord(text).ok).toBe(false);
      }),
    );
    for (const field of Object.keys(PASS)) {
      const { [field as keyof JournalRecord]: _, ...rest } = PASS;
      expect(readRecord(JSON.stringify(rest)).ok).toBe(false);
    }
    // A moment that no date can hold would break the file for a teacher; a kind that every object has is no kind.
    expect(readRecord(JSON.stringify({ ...PASS, at: 8.64e15 + 1 })).ok).toBe(false);
    for (const kind of ['constructor', 'toString', '__proto__']) expect(readRecord(JSON.stringify({ ...PASS, kind })).ok).toBe(false);
  });

  test('sums up shares and tempi', () => {
    const slower: JournalRecord = { ...PASS, tempo: 60 };
    const failed: JournalRecord = { ...PASS, tempo: 90, clean: false };
    const kept: JournalRecord = { kind: 'check', at: 1, chart: 'x', title: 'x', item: 'x', result: 'clean', daysSince: 1 };
    expect(summaryOf([PASS, slower, failed, kept])).toEqual({
      passes: 3,
      shareClean: 2 / 3,
      tempoReached: { 'last-ferry': 72 },
      shareKept: 1,
    });
    expect(summaryOf([])).toEqual({ passes: 0, shareClean: null, tempoReached: {}, shareKept: null });
  });

  test('the file for a teacher: oldest first, quoted by RFC 4180, no formulas', () => {
    const headings = Object.fromEntries(JOURNAL_COLUMNS.map((column) => [column, column.toUpperCase()])) as Record<JournalColumn, string>;
    const csv = journalCsv([PASS, NOTE], headings, (plain) => plain);
    const lines = csv.split('\r\n');
    expect(lines[0]).toBe('AT,KIND,TITLE,BARS,TEMPO,LEVEL,DIRECTION,CLEAN,SHARERIGHT,OFFSETMS,SPREADMS,SOURCE,RESULT,TEXT');
    expect(lines[1]).toBe(`1970-01-01T00:00:00.005Z,note,'=SUM(A1),,,,,,,,,,,"Left hand, ""softly"",\nagain"`);
    expect(lines[2]).toBe('2026-11-25T18:00:00.000Z,pass,Last Ferry,1–4,72,2,2-3,yes,0.973,-11.3,18,midi,,');
    expect(csv.endsWith('\r\n')).toBe(true);
  });
});
