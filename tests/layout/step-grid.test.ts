import { describe, expect, it } from 'vitest';
import { cardAfter } from '../../src/layout/grid/split';
import { stepGrid } from '../../src/layout/step-grid';
import { FERRY, ferryScore, ODD_FERRY, SHORT_FERRY } from './ferry-score';

const grid = stepGrid(ferryScore());
const panel = (bar: number, from = grid) => {
  const found = from.cards.flatMap((card) => card.panels)[bar];
  if (!found) throw new Error(`no bar ${bar}`);
  return found;
};
const bars = (of: typeof grid) => of.cards.map((card) => [card.fromBar, card.toBar]);

describe('the cards of a form', () => {
  it('hold one clave cycle each, and a one-bar break completes the cycle of the bar before it', () => {
    expect(bars(grid)).toEqual([
      [0, 2],
      [2, 4],
      [4, 6],
      [6, 8],
      [8, 10],
      [10, 12],
    ]);
    expect(grid.cards.every((card) => card.side === 2 && card.notes.length === 0)).toBe(true);
  });

  it('begin with whatever side comes after an odd section, and say so', () => {
    const odd = stepGrid(ferryScore(ODD_FERRY));
    expect(bars(odd)).toEqual([
      [0, 2],
      [2, 4],
      [4, 6],
      [6, 7],
      [7, 9],
      [9, 11],
    ]);
    expect(odd.cards.map((card) => card.side)).toEqual([2, 2, 2, 2, 3, 3]);
    expect(odd.cards[3]?.notes).toEqual(['lone bar']);
    expect(odd.cards[4]?.notes).toEqual(['other side']);
    expect(odd.sections.map((section) => [section.name, section.odd, section.otherSide])).toEqual([
      ['A', false, false],
      ['Bridge', true, false],
      ['Coro', false, true],
    ]);
  });

  it('end at a bar of half a side, show both sides where the clave lies across the bars, and say where it starts again', () => {
    const short = stepGrid(ferryScore(SHORT_FERRY));
    expect(bars(short)).toEqual([
      [0, 2],
      [2, 3],
      [3, 5],
      [5, 7],
      [7, 9],
    ]);
    expect(short.cards[1]?.notes).toEqual(['half side']);
    expect(panel(2, short).steps).toBe(4);
    expect(panel(3, short).sides).toEqual([
      { from: 0, to: 4, side: 2 },
      { from: 4, to: 8, side: 3 },
    ]);
    expect(short.cards[4]?.notes).toEqual(['restart']);
  });

  it('are listed by bar and by section, a shared card in both sections', () => {
    expect(grid.cardOfBar).toEqual([0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5]);
    expect(grid.sections[1]?.blocks).toEqual([
      { card: 2, fromBar: 4, toBar: 6 },
      { card: 3, fromBar: 6, toBar: 7 },
    ]);
    expect(grid.sections[2]?.blocks).toEqual([{ card: 3, fromBar: 7, toBar: 8 }]);
  });

  it('follow each other round a closed form and end with an open one', () => {
    expect(cardAfter(grid, 2)?.index).toBe(3);
    expect(cardAfter(grid, 5)?.index).toBe(0);
    expect(cardAfter(stepGrid(ferryScore(FERRY, '2-3', false)), 5)).toBeNull();
  });

  it('of a loop take their strokes from the loop, and those around it from the whole form', () => {
    const whole = ferryScore();
    const loopBars = whole.bars.slice(2, 4);
    const inside = (tick: number) => tick >= 3840 && tick < 7680;
    const strokes = whole.parts.rightHand.filter((stroke) => inside(stroke.tick)).map((stroke) => ({ ...stroke, velocity: 1 }));
    const loop = { ...whole, bars: loopBars, fromTick: 3840, toTick: 7680, parts: { ...whole.parts, rightHand: strokes } };
    const both = stepGrid(loop, whole);
    expect(bars(both)).toEqual(bars(grid));
    expect(
      panel(2, both)
        .right.filter((mark) => !mark.ringsIn)
        .every((mark) => mark.stroke.velocity === 1),
    ).toBe(true);
    expect(panel(0, both).right.some((mark) => mark.stroke.velocity === 96)).toBe(true);
    expect(cardAfter(both, 1)?.index).toBe(1);
  });
});

describe('the marks of a panel', () => {
  it('stand on the steps on which they are struck', () => {
    const struck = panel(0).right.filter((mark) => !mark.ringsIn);
    expect(struck.map((mark) => [mark.step, mark.stroke.role])).toEqual([
      [0, 'octave'],
      [2, 'inner'],
      [3, 'octave'],
      [5, 'inner'],
      [7, 'octave'],
    ]);
    // Son clave 2-3: slots 2 4 | 0 3 6 (Santos, "Patrones de songo y salsa", 2009; Toussaint 2011 for 3-2).
    expect(panel(0).claveSteps).toEqual([2, 4]);
    expect(panel(1).claveSteps).toEqual([0, 3, 6]);
  });

  it('put a chord where it is played, with a tie to where it is written, and repeat it there', () => {
    expect(panel(0).chords).toEqual([
      { symbol: 'Em7', kind: 'played', step: 0, tieTo: null },
      { symbol: 'A7', kind: 'played', step: 7, tieTo: 8 },
    ]);
    expect(panel(1).chords[0]).toEqual({ symbol: 'A7', kind: 'echo', step: 0, tieTo: null });
  });

  it('let the first chord of a closed form be taken early at its end, and nothing in an open one', () => {
    expect(panel(11).chords.at(-1)).toEqual({ symbol: 'Em7', kind: 'played', step: 7, tieTo: 8 });
    expect(panel(11, stepGrid(ferryScore(FERRY, '2-3', false))).chords.map((mark) => mark.kind)).toEqual(['echo']);
  });

  it('say which chord goes on in a bar that has none of its own', () => {
    const still = stepGrid(
      ferryScore([
        { chord: 'Em7', section: 'A' },
        { chord: 'Em7', section: 'A' },
      ]),
    );
    expect(panel(1, still).chords).toEqual([{ symbol: 'Em7', kind: 'carried', step: 0, tieTo: null }]);
  });

  it('ring over the barline into the next panel', () => {
    expect(panel(0).right.find((mark) => mark.ringsOut)).toMatchObject({ step: 7, steps: 2 });
    expect(panel(1).right[0]).toMatchObject({ step: -1, steps: 2, ringsIn: true, ringsOut: false });
    expect(panel(0).bass.at(-1)).toMatchObject({ step: 6, steps: 5, ringsOut: true });
    expect(panel(1).bass[0]).toMatchObject({ step: -2, steps: 5, ringsIn: true });
  });

  it('ring over the seam of a closed form, but not under a stroke that belongs to the first time alone', () => {
    const turned = stepGrid(
      ferryScore(
        [
          { chord: 'Em7', section: 'A' },
          { chord: 'A7', section: 'A' },
        ],
        '3-2',
      ),
    );
    expect(panel(0, turned).right[0]).toMatchObject({ step: -1, steps: 2, ringsIn: true });
    expect(panel(0, turned).bass.filter((mark) => mark.ringsIn)).toEqual([]);
    const open = stepGrid(
      ferryScore(
        [
          { chord: 'Em7', section: 'A' },
          { chord: 'A7', section: 'A' },
        ],
        '3-2',
        false,
      ),
    );
    expect(panel(0, open).right[0]).toMatchObject({ step: 1, ringsIn: false });
  });

  it('count 1 to 4 with the & between, and 1 to 6 with two beats in 6/8', () => {
    expect(
      panel(0)
        .counts.map((count) => count.text)
        .join(' '),
    ).toBe('1 & 2 & 3 & 4 &');
    const score = ferryScore([
      { chord: 'Em7', section: 'A', steps: 6 },
      { chord: 'A7', section: 'A', steps: 6 },
    ]);
    const six = stepGrid({ ...score, meter: '6/8', form: { ...score.form, meter: '6/8' } });
    expect(bars(six)).toEqual([[0, 2]]);
    expect(
      panel(0, six)
        .counts.map((count) => (count.strong ? `[${count.text}]` : count.text))
        .join(' '),
    ).toBe('[1] 2 3 [4] 5 6');
    expect(panel(0, six).cells).toHaveLength(6);
  });

  it('have names in words', () => {
    expect(panel(0).cells[7]?.label).toBe('bar 1, 2-side, beat 4 and, A7 taken early, right hand C sharp 5 and 6, left hand C sharp 4');
    expect(panel(0).cells[2]?.label).toBe('bar 1, 2-side, beat 2, clave stroke, right hand G 5 and B 5, left hand G 4');
    expect(panel(0).cells[1]?.label).toBe('bar 1, 2-side, beat 1 and');
  });
});

describe('the direction', () => {
  it('changes the sides of the bars and their rhythm, not their chords', () => {
    const turned = stepGrid(ferryScore(FERRY, '3-2'));
    expect(turned.cards[0]?.panels.map((each) => each.side)).toEqual([3, 2]);
    expect(panel(0, turned).claveSteps).toEqual(panel(1).claveSteps);
    expect(panel(0, turned).bar.chords.map((chord) => chord.symbol)).toEqual(['Em7']);
  });
});
