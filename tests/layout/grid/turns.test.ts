import { describe, expect, it } from 'vitest';
import { turnAhead } from '../../../src/layout/grid/turns';
import { stepGrid } from '../../../src/layout/step-grid';
import { readChart } from '../../../src/music/chart/read';
import { arrange } from '../../../src/music/score';

/** A form of sections with so many bars each, all on one chord: `form(7, 1, 4)`. */
function form(...bars: readonly number[]) {
  const sections = bars.map((count, at) => `[Part ${at + 1}]\n${'| F6 '.repeat(count)}|`);
  const chart = readChart(`title: Breakwater\nclave: 2-3\n\n${sections.join('\n')}`);
  if (!chart.ok) throw new Error(JSON.stringify(chart.faults));
  return stepGrid(arrange(chart.value));
}

// Expected values by counting bars: sides alternate bar by bar and never reset by themselves.
describe('where the sides turn over', () => {
  it('is nowhere in a form of even sections', () => {
    expect(form(8, 4, 8).turns).toEqual([]);
  });

  it('is where a section follows an odd one, and where the count comes back', () => {
    const turns = form(7, 1, 4).turns.map(({ bar, side, kind }) => ({ bar, side, kind }));
    // Part 1 takes bars 0 to 6 from the 2-side, Part 2 bar 7 (3-side), Part 3 from bar 8 (2-side again).
    expect(turns).toEqual([
      { bar: 7, side: 3, kind: 'section' },
      { bar: 8, side: 2, kind: 'section' },
    ]);
  });

  it('is announced at least four bars ahead from the card that sounds', () => {
    const grid = form(7, 1, 4);
    for (const card of grid.cards.filter((each) => each.fromBar < 7 && each.toBar > 3)) {
      const ahead = turnAhead(grid, card.fromBar);
      expect(ahead?.turn.bar).toBe(7);
      expect(ahead?.away).toBe(7 - card.fromBar);
    }
    expect(turnAhead(grid, 0)).toBeNull();
  });

  it('is where a section comes again from the other side, when an odd form goes round', () => {
    // Thirteen bars, so the form sounds twice before it is back: every section of the second time begins on its other side.
    const grid = form(4, 7, 2);
    expect(grid.panels).toHaveLength(26);
    expect(grid.turns.map((turn) => turn.bar)).toEqual([11, 13, 17, 24]);
  });

  it('is a bar of half a side, and a clave that starts again', () => {
    const chart = readChart('title: Breakwater\nclave: 2-3\n\n[A]\n| F6 | F6 | (2/4) F6 | F6 |\n[B, clave restart 3-2]\n| F6 | F6 |');
    if (!chart.ok) throw new Error(JSON.stringify(chart.faults));
    const { turns } = stepGrid(arrange(chart.value, { closed: false }));
    expect(turns.map(({ bar, kind }) => `${bar} ${kind}`)).toEqual(['3 across', '4 restart']);
  });
});
