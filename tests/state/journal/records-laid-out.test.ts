/** The journal's records laid out: what is due again, what each day, chart and step comes to. */
import { describe, expect, it } from 'vitest';
import type { PassRecord } from '../../../src/practice/journal';
import { byDay, tempiReached, timingOf } from '../../../src/state/journal/by-day';
import { checkOf, dueItems, dueNow } from '../../../src/state/journal/due-items';

const DAY = 86_400_000;
const UTC = () => 0;
const pass = (change: Partial<PassRecord> = {}): PassRecord => ({
  kind: 'pass',
  at: 100 * DAY,
  chart: 'demo-last-ferry',
  title: 'Last Ferry',
  fromBar: 0,
  toBar: 4,
  tempo: 60,
  level: 2,
  direction: '2-3',
  clean: true,
  shareRight: 1,
  offsetMs: null,
  spreadMs: 12,
  stepsMs: [],
  findings: [],
  source: 'midi',
  ...change,
});
const kept = (...records: PassRecord[]) => records.map((record, index) => ({ id: String(index), record }));

describe('What comes back', () => {
  const again = pass({ at: 101 * DAY });
  it('is due after one day, later while it stays, and off while a gig lies ahead', () => {
    const check = checkOf([pass()], again, UTC);
    expect(check).toMatchObject({ result: 'clean', daysSince: 1 });
    const items = dueItems(check ? [pass(), again, check] : [], UTC);
    expect(dueNow(dueItems([pass()], UTC), 100, null)).toEqual([]);
    expect(dueNow(dueItems([pass()], UTC), 101, null)).toHaveLength(1);
    expect(dueNow(dueItems([pass()], UTC), 101, 101)).toEqual([]);
    expect(dueNow(items, 102, null)).toEqual([]);
    expect(dueNow(items, 103, null)).toHaveLength(1);
  });

  it('is checked once a day, by the day of the player, and never for chords of the quick line', () => {
    expect(checkOf([pass()], pass(), UTC)).toBeNull();
    expect(checkOf([pass(), again], pass({ at: 101 * DAY + 1 }), UTC)).toBeNull();
    expect(checkOf([pass({ chart: 'quick' })], pass({ chart: 'quick', at: 101 * DAY }), UTC)).toBeNull();
    // 23:30 and 00:30 in Havana in winter (UTC−5): two days there, one in UTC.
    const late = pass({ at: 100 * DAY + 4.5 * 3_600_000 });
    const early = pass({ at: 100 * DAY + 5.5 * 3_600_000 });
    expect(checkOf([late], early, UTC)).toBeNull();
    expect(checkOf([late], early, () => -300)).toMatchObject({ daysSince: 1 });
  });
});

describe('What the place shows', () => {
  it('is each loop of a day as one line, the last day and the last loop first', () => {
    const records = kept(
      pass({ clean: false, findings: ['late chords', 'uneven'] }),
      pass({ fromBar: 4, toBar: 8 }),
      pass({ tempo: 66, findings: ['late chords'] }),
      pass({ at: 101 * DAY }),
    );
    const [last, first] = byDay(records, UTC);
    expect(last?.loops).toHaveLength(1);
    expect(first?.loops).toMatchObject([
      { fromBar: 0, passes: 2, clean: 1, slowest: 60, fastest: 66, said: ['late chords', 'uneven'], ids: ['0', '2'] },
      { fromBar: 4, passes: 1 },
    ]);
  });

  it('is the fastest clean pass of each chart, and the mean of the steps of judged passes', () => {
    const records = kept(
      pass({ tempo: 60, stepsMs: [10, null] }),
      pass({ tempo: 90, clean: false, stepsMs: [20, null] }),
      pass({ chart: 'x', clean: false }),
    );
    expect(tempiReached(records)).toMatchObject([
      { chart: 'x', tempo: null },
      { chart: 'demo-last-ferry', tempo: 60, passes: 2, clean: 1 },
    ]);
    expect(timingOf(records)).toMatchObject({ passes: 2, steps: [{ meanMs: 15, spreadMs: 5 }, { meanMs: null }] });
    expect(timingOf([])).toBeNull();
  });
});
