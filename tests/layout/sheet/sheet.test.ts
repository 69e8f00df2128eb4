import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notate } from '../../../src/layout/notation/notate';
import { systemBreaks } from '../../../src/layout/notation/systems';
import { foldSystems } from '../../../src/layout/sheet/folds';
import { paginate } from '../../../src/layout/sheet/paginate';
import { PAPERS, pageRoom, paperUnits, UNIT_MM } from '../../../src/layout/sheet/paper';
import { type SheetBlock, sheetBlocks } from '../../../src/layout/sheet/sheet-blocks';
import { DEFAULT_CHOICE, type SheetChoice, type SheetPart } from '../../../src/layout/sheet/sheet-choice';
import { type SheetScores, sheetMusic } from '../../../src/layout/sheet/sheet-music';
import { tempoLadder } from '../../../src/layout/sheet/tempo-ladder';
import { twelveKeys } from '../../../src/layout/sheet/twelve-keys';
import type { Score } from '../../../src/music/score';
import { arrange } from '../../../src/music/score';
import { chartOf } from '../../music/chart/chart-of';
import { LOOP_SCORE } from '../loop-score';

/** The loop `times` over as one long form of sections named in `names`, four bars each. */
function long(names: readonly string[]): Score {
  const again = <T extends { readonly tick: number }>(list: readonly T[]): T[] =>
    names.flatMap((_, i) => list.map((item) => ({ ...item, tick: item.tick + i * 7680 })));
  const { parts } = LOOP_SCORE;
  // Nothing rings over the ends, so that every time through is the same.
  const dry = parts.rightHand.map((s) => ({ ...s, durationTicks: 240 }));
  const bars = names.flatMap((name, i) =>
    LOOP_SCORE.bars.map((bar) => ({
      ...bar,
      index: bar.index + 4 * i,
      tick: bar.tick + 7680 * i,
      section: name,
      chords: bar.chords.map((c) => ({ ...c, tick: c.tick + 7680 * i })),
    })),
  );
  const visits = names.map((section, i) => ({
    section,
    role: null,
    fromBar: 4 * i,
    toBar: 4 * i + 4,
    side: 2 as const,
    onCue: false,
    otherSide: false,
  }));
  return {
    ...LOOP_SCORE,
    bars,
    toTick: 7680 * names.length,
    form: { ...LOOP_SCORE.form, bars, visits },
    parts: { rightHand: again(dry), leftHand: [], bass: [], clave: again(parts.clave), percussion: {} },
  };
}
const folded = (score: Score): string[] => {
  const notation = notate(score);
  return foldSystems(notation, systemBreaks(notation.bars, 4)).map((item) =>
    item.kind === 'system'
      ? `${item.range.from}-${item.range.to}`
      : `${item.section} ${item.range.from}-${item.range.to} as ${item.same.from}-${item.same.to}`,
  );
};

describe('foldSystems', () => {
  it('writes an identical section once and refers to it, but always prints the last system', () => {
    expect(folded(long(['A', 'A', 'B', 'A']))).toEqual(['0-4', 'A 4-8 as 0-4', '8-12', '12-16']);
  });
  it('never leaves out part of a section', () => {
    const twice = long(['A', 'A', 'B', 'A', 'A', 'B']);
    const visits = [0, 8, 12, 20].map((fromBar, i) => ({
      section: i % 2 === 0 ? 'A' : 'B',
      role: null,
      fromBar,
      toBar: fromBar + (i % 2 === 0 ? 8 : 4),
      side: 2 as const,
      onCue: false,
      otherSide: false,
    }));
    expect(folded({ ...twice, form: { ...twice.form, visits } })).toEqual(['0-4', '4-8', '8-12', 'A 12-20 as 0-8', '20-24']);
  });
  it('prints a section that differs in a single note, a name or a side', () => {
    const score = long(['A', 'A', 'A']);
    const changed = score.parts.rightHand.map((s, i) => (i === 20 ? { ...s, midi: [s.midi[0] ?? 0], names: [s.names[0] ?? ''] } : s));
    expect(folded({ ...score, parts: { ...score.parts, rightHand: changed } })[1]).toBe('4-8');
    const flipped = {
      ...score,
      bars: score.bars.map((bar) =>
        bar.index >= 4 && bar.index < 8 ? { ...bar, side: bar.side === 2 ? (3 as const) : (2 as const) } : bar,
      ),
    };
    expect(folded(flipped)[1]).toBe('4-8');
  });
});

const block = (heightMm: number, keepWithNext: boolean, i: number): SheetBlock => ({
  id: String(i),
  content: { kind: 'caution' },
  heightMm,
  keepWithNext,
});
describe('paginate', () => {
  it('keeps every block in order, none cut, none torn from what it must stay with', () => {
    const blocks = fc
      .array(fc.tuple(fc.integer({ min: 1, max: 120 }), fc.boolean()), { minLength: 1, maxLength: 40 })
      .map((list) => list.map(([height, keep], i) => block(height, keep, i)));
    fc.assert(
      fc.property(blocks, (list) => {
        const pages = paginate(list, 265);
        expect(pages.flat()).toEqual(list);
        for (const page of pages) {
          const height = page.reduce((sum, b) => sum + b.heightMm, 0);
          const oneGroup = page.slice(0, -1).every((b) => b.keepWithNext);
          expect(height <= 265 || oneGroup).toBe(true);
        }
        expect(pages.slice(0, -1).every((page) => page.at(-1)?.keepWithNext === false)).toBe(true);
      }),
    );
  });
});

describe('sheetBlocks', () => {
  const scores: SheetScores = { whole: LOOP_SCORE, loop: null, other: LOOP_SCORE, variation: LOOP_SCORE, levels: [] };
  const blocksOf = (change: Partial<SheetChoice>, teacher = '', paper: 'A4' | 'Letter' = 'A4') => {
    const choice = { ...DEFAULT_CHOICE, ...change };
    return sheetBlocks(sheetMusic(scores, choice), choice, teacher, paper);
  };
  const kinds = (blocks: readonly SheetBlock[]): string[] =>
    blocks.map(({ content }) => (content.kind === 'heading' ? content.heading.of : content.kind));
  const without = (...parts: SheetPart[]) => ({
    ...DEFAULT_CHOICE.parts,
    ...(Object.fromEntries(parts.map((part) => [part, false])) as Partial<Record<SheetPart, boolean>>),
  });

  it('has everything a handout holds, in order (trade practice: rhythm first, variation, other direction, tempi and keys, the teacher)', () => {
    expect(kinds(blocksOf({}))).toEqual(
      'head rhythm system system legend variation system other system practice teacher caution'.split(' '),
    );
  });
  it('leaves out what is not chosen', () => {
    expect(kinds(blocksOf({ parts: without('rhythm', 'variation', 'other', 'ladder', 'keys', 'teacher') }))).toEqual(
      'head system legend caution'.split(' '),
    );
  });
  it('gives each hand a line of its own before both', () => {
    const blocks = blocksOf({ hands: 'apart', parts: without('rhythm', 'variation', 'other') });
    expect(kinds(blocks)).toEqual('head right system left system together system legend practice teacher caution'.split(' '));
    const staves = blocks.flatMap(({ content }) => (content.kind === 'system' ? [Object.keys(content.geometry.lines).join(' ')] : []));
    expect(staves).toEqual(['clave right', 'clave left', 'clave right left bass']);
  });
  it.each(['A4', 'Letter'] as const)('puts a four-bar loop with its other direction on one page of %s', (paper) => {
    const blocks = blocksOf({ parts: without('rhythm', 'variation') }, '', paper);
    expect(paginate(blocks, pageRoom(paper))).toHaveLength(1);
    expect(new Set(blocks.map((b) => b.id)).size).toBe(blocks.length);
  });
  it('makes room for what the teacher writes', () => {
    const height = (text: string): number => blocksOf({}, text).find(({ content }) => content.kind === 'teacher')?.heightMm ?? 0;
    expect(height('word '.repeat(79))).toBeGreaterThan(height('Slowly.') + 6);
  });
  it.each(['A4', 'Letter'] as const)('keeps every level on one page of %s as long as a page has room for it', (paper) => {
    const bars = 'Em7 A7 Dmaj7 B7 Em7 F#7 Bm7 E7 Am7 Gm7 C7 F6'.split(' ');
    for (const count of [4, 8, 12]) {
      const chart = chartOf(`[A]\n| ${bars.slice(0, count).join(' | ')} |\n`);
      const three: SheetScores = { ...scores, levels: ([1, 2, 3] as const).map((level) => arrange(chart, { level })) };
      const choice = { ...DEFAULT_CHOICE, kind: 'levels' as const };
      const pages = paginate(sheetBlocks(sheetMusic(three, choice), choice, '', paper), pageRoom(paper));
      expect(pages.flatMap(kinds).filter((kind) => kind === 'system')).toHaveLength((3 * count) / 4);
      // A system at the head of a page has lost its heading.
      for (const page of pages) expect(page[0]?.content.kind, `${count} bars`).not.toBe('system');
    }
  });
  it('prints answers on a page of their own', () => {
    const blocks = blocksOf({ kind: 'worksheet', task: 'missing' });
    const pages = paginate(blocks, pageRoom('A4')).map(kinds);
    expect(pages.map((page) => page[0])).toEqual(['head', 'answers']);
    expect(kinds(blocksOf({ kind: 'worksheet', task: 'missing', answers: false }))).not.toContain('answers');
  });
});

describe('paper', () => {
  // ISO 216: A4 is 210 × 297 mm. ANSI/ASME Y14.1 size A: 8.5 × 11 inches of 25.4 mm.
  it('has the sizes of the standards', () => {
    expect(PAPERS.A4).toEqual({ width: 210, height: 297 });
    expect([PAPERS.Letter.width, PAPERS.Letter.height]).toEqual([expect.closeTo(8.5 * 25.4, 6), expect.closeTo(11 * 25.4, 6)]);
  });
  it('prints a staff at least 6.5 mm high inside the edges', () => {
    expect(40 * UNIT_MM).toBeGreaterThanOrEqual(6.5);
    expect(paperUnits('A4') * UNIT_MM).toBeLessThanOrEqual(185);
  });
});

describe('tempoLadder', () => {
  it('climbs by four from now to the goal', () => expect(tempoLadder(62, 92)).toEqual([62, 66, 70, 74, 78, 82, 86, 90, 92]));
  it('is the goal alone when it is reached', () => expect(tempoLadder(92, 92)).toEqual([92]));
  it('never has more than eleven rungs, always rises, ends at the goal', () => {
    fc.assert(
      fc.property(fc.integer({ min: 25, max: 140 }), fc.integer({ min: 25, max: 140 }), (now, goal) => {
        const ladder = tempoLadder(now, goal);
        expect(ladder.length).toBeLessThanOrEqual(11);
        expect(ladder.at(-1)).toBe(goal);
        expect(ladder.every((rung, i) => i === 0 || rung > (ladder[i - 1] ?? 0))).toBe(true);
      }),
    );
  });
});

describe('twelveKeys', () => {
  // Circle of fifths, falling: handbook knowledge.
  it('goes round the circle from the key of the tune', () => {
    expect(
      twelveKeys({ tonic: 'D', mode: 'major' })
        .map((key) => key.tonic)
        .join(' '),
    ).toBe('D G C F Bb Eb Ab Db F# B E A');
    expect(
      twelveKeys({ tonic: 'G', mode: 'minor' })
        .map((key) => key.tonic)
        .join(' '),
    ).toBe('G C F Bb Eb G# C# F# B E A D');
  });
  it('keeps the spelling of the key it starts from', () => {
    expect(twelveKeys({ tonic: 'Gb', mode: 'major' })[0]?.tonic).toBe('Gb');
    expect(twelveKeys({ tonic: 'Cb', mode: 'major' })).toHaveLength(12);
  });
});
