import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listGeometry } from '../../../src/layout/sheet/list-geometry';
import { breaksFrom, lineCounts, listLines, pencilList } from '../../../src/layout/sheet/pencil-list';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';
import { readChart } from '../../../src/music/chart/read';
import { arrange, type Score } from '../../../src/music/score';

const scoreOf = (text: string): Score => {
  const chart = readChart(text);
  if (!chart.ok) throw new Error(JSON.stringify(chart.faults));
  return arrange(chart.value, { level: 2 });
};
const planks = scoreOf(DEMO_BOOK.find((demo) => demo.id === 'demo-seven-planks-down')?.text ?? '');

describe('pencilList', () => {
  // Worked by hand: 3-2; A of 8 twice begins and ends on whole cycles, so the bridge begins on the 3-side; its 7 bars leave the break on the 2-side
  // (bar 24), and 7 + 1 = 8 brings the coro back to the 3-side.
  it('writes a form with an odd bridge as worked out by hand', () => {
    const list = pencilList(planks);
    expect(list.sections.map(({ name, bars, odd, sides, onCue }) => [name, bars.length, odd, sides, onCue])).toEqual([
      ['A', 8, false, [3, 3], false],
      ['Bridge', 7, true, [3], false],
      ['Break', 1, true, [2], false],
      ['Coro', 4, false, [3], true],
    ]);
    expect(list.order).toEqual([
      { section: 'A', times: 2, side: 3 },
      { section: 'Bridge', times: 1, side: 3 },
      { section: 'Break', times: 1, side: 2 },
      { section: 'Coro', times: 1, side: 3 },
    ]);
  });

  it('marks hits, the stop, and where the piano comes in again on which side', () => {
    const [, bridge, rest, coro] = pencilList(planks).sections;
    // {1 2& 4~} is steps 0, 3 and 6.
    expect(bridge?.bars.at(-1)?.hits).toEqual([0, 3, 6]);
    expect(rest?.bars[0]).toMatchObject({ silence: 'stop', chords: [] });
    const first = planks.parts.rightHand.find((stroke) => stroke.tick >= 24 * 1920);
    expect(coro?.bars[0]?.reentry).toEqual({ step: ((first?.tick ?? 0) - 24 * 1920) / 240, side: 3 });
  });

  it('leaves out the downbeat of a chord that was struck before it: in the standard montuno, chords of the 3-side', () => {
    const ferry = pencilList(scoreOf(DEMO_BOOK[0]?.text ?? ''));
    for (const bar of ferry.sections.flatMap((section) => section.bars)) {
      if (bar.chords[0]?.text === '%') continue;
      expect(bar.leaveOutOne, `${bar.chords[0]?.text} on the ${bar.side}-side`).toBe(bar.side === 3);
    }
  });

  it.each(DEMO_BOOK.map((demo) => [demo.title, demo.text]))('%s: every octave note is one that the hand plays in that chord', (_, text) => {
    const score = scoreOf(text);
    const list = pencilList(score);
    const played = new Map<string, Set<string>>();
    for (const stroke of score.parts.rightHand.filter((one) => one.role === 'octave' || one.role === 'chord')) {
      const name = (stroke.names[0] ?? '')
        .replace(/-?\d+$/, '')
        .replace('#', '♯')
        .replace(/b$/, '♭');
      played.set(stroke.chord, (played.get(stroke.chord) ?? new Set()).add(name));
    }
    const symbols = new Map(
      score.bars.flatMap((bar) => bar.chords.map((chord) => [chord.symbol.replace(/b/g, '♭').replace(/#/g, '♯'), chord.symbol])),
    );
    const chords = list.sections.flatMap((section) => section.bars.flatMap((bar) => bar.chords));
    expect(chords.filter((chord) => chord.octave !== null).length).toBeGreaterThan(chords.length / 2);
    for (const chord of chords)
      if (chord.octave !== null)
        expect(played.get(symbols.get(chord.text) ?? '')?.has(chord.octave), `${chord.octave} over ${chord.text}`).toBe(true);
  });
});

describe('line breaks', () => {
  const list = pencilList(planks);
  it('are every four bars unless the player sets them; a section begins a line', () => {
    expect(lineCounts(list, null)).toEqual([4, 4, 4, 3, 1, 4]);
    expect(lineCounts(list, breaksFrom([8, 3, 4], list))).toEqual([8, 3, 4, 1, 4]);
  });
  it('read back as they were typed, and lose no bar', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 12 }), { maxLength: 12 }), (counts) => {
        const breaks = breaksFrom(counts, list);
        expect(breaksFrom(lineCounts(list, breaks), list)).toEqual(breaks);
        for (const section of list.sections) expect(listLines(section, breaks).flat()).toEqual(section.bars);
      }),
    );
  });
});

describe('listGeometry', () => {
  it.each(['A4', 'Letter'] as const)('fits on one page of %s whatever the breaks, nothing over the edge', (paper) => {
    const list = pencilList(planks);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 12 }), { maxLength: 20 }), (counts) => {
        const geometry = listGeometry(list, breaksFrom(counts, list), paper);
        const lines = geometry.blocks.flatMap((block) => block.lines);
        const lowest = Math.max(...lines.map((line) => line.y)) + geometry.lineHeight;
        expect(lowest).toBeLessThanOrEqual(geometry.legendY - 8);
        const right = Math.max(...lines.flatMap((line) => line.bars.map((bar) => bar.x + bar.width)));
        expect(right).toBeLessThanOrEqual(geometry.width - geometry.edge + 1e-6);
      }),
    );
  });
});
