import { describe, expect, it } from 'vitest';
import { stepGrid } from '../../../src/layout/step-grid';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';
import { readChart } from '../../../src/music/chart/read';
import { type ArrangeOptions, arrange } from '../../../src/music/score';

function gridOf(options: ArrangeOptions, text = DEMO_BOOK[0]?.text ?? '') {
  const chart = readChart(text);
  if (!chart.ok) throw new Error('the demo chart must be read');
  const score = arrange(chart.value, options);
  return { score, grid: stepGrid(score) };
}

describe('the tumbao of the left hand', () => {
  it('is drawn once, in the bass lane, and named once', () => {
    const { grid, score } = gridOf({ hands: 'tumbao' });
    expect(score.parts.leftHand.length).toBeGreaterThan(0);
    expect(grid.panels.every((panel) => panel.left.length === 0)).toBe(true);
    const cells = grid.panels.flatMap((panel) => panel.cells).filter((cell) => cell.left && cell.bass);
    expect(cells.length).toBeGreaterThan(0);
    for (const cell of cells.slice(0, 8)) expect(cell.label.match(/bass/g)).toHaveLength(1);
  });
});

describe('double notes', () => {
  const { grid, score } = gridOf({ devices: ['double-notes'] });
  const off = score.parts.rightHand.filter((stroke) => stroke.tick % 240 !== 0);

  it('stand at their true place, half a step after the eighth', () => {
    expect(off.length).toBeGreaterThan(0);
    for (const stroke of off) {
      const panel = grid.panels.find(({ bar }) => stroke.tick >= bar.tick && stroke.tick < bar.tick + bar.ticks);
      const mark = panel?.right.find((each) => each.stroke === stroke);
      expect(mark?.step).toBe((stroke.tick - (panel?.bar.tick ?? 0)) / 240);
    }
  });

  it('are both in the cell, and its name says which is later and what made it', () => {
    const cell = grid.panels.flatMap((panel) => panel.cells).find((each) => each.later.length > 0);
    expect(off).toContain(cell?.later[0]);
    expect(cell?.label).toMatch(/right hand .*, a sixteenth later right hand .*, double notes/);
  });
});

describe('a cycle that goes a half step out', () => {
  it('says so on its card, and only there', () => {
    // Over two chords, where the device is heard as going out.
    const { grid } = gridOf({ devices: ['half-step-out'], level: 2 }, `title: Breakwater\n\n${'| F6 | Bb6 '.repeat(8)}|`);
    const out = grid.cards.filter((card) => card.notes.includes('half step out')).map((card) => card.index);
    const struck = grid.cards
      .filter((card) => card.panels.some((panel) => panel.cells.some((cell) => cell.right?.device === 'half-step-out')))
      .map((card) => card.index);
    expect(out.length).toBeGreaterThan(0);
    expect(out.length).toBeLessThan(grid.cards.length);
    expect(out).toEqual(struck);
  });
});

describe('the map of the form', () => {
  it('marks open vamps, and levels when they go by section', () => {
    const { grid } = gridOf({});
    expect(grid.sections.map((section) => section.onCue)).toEqual([false, false, false, false, true]);
    expect(grid.sections.every((section) => section.levels !== null && section.levels[0] <= section.levels[1])).toBe(true);
    expect(gridOf({ level: 3 }).grid.sections.every((section) => section.levels === null)).toBe(true);
  });
});
