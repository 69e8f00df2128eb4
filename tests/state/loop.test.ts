import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/music/chart/read';
import { unfold } from '../../src/music/chart/unfold';
import { barAt, closes, cycleAt, fitLoop, moveEnd, snap, withBarAfter, withBarBefore } from '../../src/state/loop';
import { assert } from '../../src/vocabulary';

function formOf(rows: string) {
  const reading = readChart(`title: Loops\nkey: C\nclave: 2-3 son\ntempo: half = 80\n${rows}\n`);
  assert(reading.ok, `the test chart must be sound: ${JSON.stringify(reading)}`);
  return unfold(reading.value);
}
const EVEN = formOf('[A]\n| C | G7 | C | G7 |\n| C | F | G7 | C |');
const ODD = formOf('[A]\n| C | G7 | C | G7 |\n[Bridge]\n| F | F | G7 |\n[B]\n| C | G7 | C | G7 | C |');

describe('Loops are runs of whole clave cycles', () => {
  it('takes the cycle that a bar stands in', () => {
    expect(cycleAt(EVEN, 0)).toEqual({ fromBar: 0, toBar: 2 });
    expect(cycleAt(EVEN, 5)).toEqual({ fromBar: 4, toBar: 6 });
  });

  it('snaps outward to the next bar where the clave closes', () => {
    expect(snap(EVEN, { fromBar: 2, toBar: 5 })).toEqual({ fromBar: 2, toBar: 6 });
    expect(snap(EVEN, { fromBar: 5, toBar: 8 })).toEqual({ fromBar: 4, toBar: 8 });
  });

  it('adds one bar before, and one after where the clave needs it to close', () => {
    expect(withBarBefore(EVEN, { fromBar: 2, toBar: 4 })).toEqual({ fromBar: 1, toBar: 5 });
    expect(withBarBefore(EVEN, { fromBar: 0, toBar: 4 })).toBeNull();
  });

  it('adds one bar after, and one before where the clave needs it to close', () => {
    expect(withBarAfter(EVEN, { fromBar: 2, toBar: 4 })).toEqual({ fromBar: 1, toBar: 5 });
    expect(withBarAfter(EVEN, { fromBar: 0, toBar: 2 })).toEqual({ fromBar: 0, toBar: 4 });
    expect(withBarAfter(EVEN, { fromBar: 4, toBar: 8 })).toBeNull();
  });

  it('moves either end by a cycle and never past the other or the form', () => {
    expect(moveEnd(EVEN, { fromBar: 2, toBar: 4 }, 'to', 1)).toEqual({ fromBar: 2, toBar: 6 });
    expect(moveEnd(EVEN, { fromBar: 2, toBar: 6 }, 'from', -1)).toEqual({ fromBar: 4, toBar: 6 });
    expect(moveEnd(EVEN, { fromBar: 2, toBar: 4 }, 'to', -1)).toBeNull();
    expect(moveEnd(EVEN, { fromBar: 0, toBar: 4 }, 'from', 1)).toBeNull();
  });

  it('fits a remembered loop to a form that has become shorter, or gives it up', () => {
    expect(fitLoop(EVEN, { fromBar: 6, toBar: 20 })).toEqual({ fromBar: 6, toBar: 8 });
    expect(fitLoop(EVEN, { fromBar: 8, toBar: 10 })).toBeNull();
    expect(fitLoop(EVEN, null)).toBeNull();
  });

  it('gives no loop where the form has no whole cycle', () => {
    expect(cycleAt(formOf('[A]\n| C |'), 0)).toBeNull();
  });

  it('closes every loop it gives, in even and odd forms', () => {
    const form = fc.constantFrom(EVEN, ODD);
    fc.assert(
      fc.property(
        form,
        fc.nat(12),
        fc.nat(12),
        fc.constantFrom('from', 'to'),
        fc.constantFrom(1 as const, -1 as const),
        (bars, a, b, end, by) => {
          const loop = snap(bars, { fromBar: Math.min(a, b), toBar: Math.max(a, b) + 1 });
          if (!loop) return;
          const given = [loop, cycleAt(bars, a), withBarBefore(bars, loop), withBarAfter(bars, loop), moveEnd(bars, loop, end, by)];
          for (const each of given) if (each) expect(closes(bars, each)).toBe(true);
          const before = withBarBefore(bars, loop);
          if (before) expect(before.fromBar).toBeLessThan(loop.fromBar);
          const after = withBarAfter(bars, loop);
          if (after) expect(after.toBar).toBeGreaterThan(loop.toBar);
        },
      ),
    );
  });

  it('finds the bar that holds a tick', () => {
    expect([0, 1919, 1920, 5760, 99_999].map((tick) => barAt(EVEN.bars, tick))).toEqual([0, 0, 1, 3, 7]);
  });
});
