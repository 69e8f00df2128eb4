/** Assignments that were accepted twice, by a page of before or in two tabs, are one; nothing of either is lost. */
import { describe, expect, it } from 'vitest';
import type { JournalRecord } from '../../../src/practice/journal';
import { type KeptAssignment, readKept, writeKept } from '../../../src/state/assignment/kept-assignments';
import { progressOf } from '../../../src/state/assignment/progress';
import { FIRST_ASSIGNMENT } from '../../exchange/assignment/stored-assignments';

const twin = (id: string, more: object): object => ({ assignment: { ...JSON.parse(FIRST_ASSIGNMENT), id }, ...more });
/** As the first pages wrote it: an id at random for each, one chart for each. */
const HELD = JSON.stringify({
  ...{ record: 'assignments', version: 1 },
  body: {
    list: [
      twin('by-file', { chart: 'c1', taken: 5, changed: 6 }),
      twin('by-link', { chart: 'c2', taken: 7, changed: 8 }),
      twin('by-mail', { chart: 'c3', taken: 9, changed: 10, removed: true }),
      twin('other', { assignment: { ...JSON.parse(FIRST_ASSIGNMENT), id: 'other', passes: 9 }, chart: 'c4', taken: 1, changed: 2 }),
    ],
  },
});
const listOf = (text: string | null): readonly KeptAssignment[] => {
  const kept = readKept(text);
  if (kept.kind !== 'good') throw new Error(kept.kind);
  return kept.list;
};
const theFirst = (text: string | null): KeptAssignment => {
  const [kept] = listOf(text);
  if (!kept) throw new Error('none was kept');
  return kept;
};

describe('An assignment that was accepted twice', () => {
  it('is one, there while one of them is, since it was first accepted, with the passes over all its charts', () => {
    const list = listOf(HELD);
    expect(list).toHaveLength(2);
    const kept = theFirst(HELD);
    expect(kept).toMatchObject({ chart: 'c2', taken: 5, changed: 8, assignment: { id: 'by-link' } });
    expect(kept.removed).toBeUndefined();
    expect([...(kept.also ?? [])].sort()).toEqual(['c1', 'c3']);
    const pass = { kind: 'pass', at: 100, fromBar: 0, toBar: 4, tempo: 84, clean: true } as const;
    const passes = ['c1', 'c2', 'c3', 'c4'].map((chart) => ({ ...pass, chart }) as unknown as JournalRecord);
    expect(progressOf(kept, passes)).toMatchObject({ passes: 3, atGoal: 3 });
  });

  it('is written as one and read as it was; put away it is so under every id', () => {
    const again = writeKept(listOf(HELD), HELD);
    expect(listOf(again)).toEqual(listOf(HELD));
    const away = writeKept([{ ...theFirst(HELD), changed: 20, removed: true }], HELD);
    expect(theFirst(away)).toMatchObject({ removed: true, taken: 5 });
    // A tab that has not heard of it writes what it knows: it stays away.
    expect(theFirst(writeKept(listOf(HELD), away))).toMatchObject({ removed: true });
  });

  it('in two tabs keeps the charts of both', () => {
    const { also: _, ...here } = theFirst(HELD);
    const there = { ...here, chart: 'c9', changed: 30, taken: 29 };
    const kept = theFirst(writeKept([there], writeKept([here], null)));
    expect(kept).toMatchObject({ chart: 'c9', also: ['c2'], taken: 5 });
  });
});
