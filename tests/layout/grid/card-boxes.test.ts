import { describe, expect, it } from 'vitest';
import { cardBoxes } from '../../../src/layout/grid/card-boxes';
import { frameOf } from '../../../src/layout/grid/frame';
import { stepGrid } from '../../../src/layout/step-grid';
import { ferryScore } from '../ferry-score';

const grid = stepGrid(ferryScore());

describe('the boxes of a card', () => {
  const frame = frameOf(false, 420);
  const first = grid.cards[0];
  if (!first) throw new Error('no card');
  const [left, right] = cardBoxes(grid, first, frame);

  it('draw a half step of the octave line at least as high as a sixth of a bracket, and every bracket alike', () => {
    const strokes = left?.right.filter((hand) => hand.stem) ?? [];
    const heights = strokes.map((hand) => (hand.stem ? hand.stem.bottom - hand.stem.top : 0));
    expect(new Set(heights.map(Math.round)).size).toBe(1);
    const [d, , cSharp] = strokes.map((hand) => hand.stem?.bottom ?? 0);
    expect((cSharp ?? 0) - (d ?? 0)).toBeGreaterThan((heights[0] ?? 0) / 6);
  });

  it('lead the octave line on into the next panel at the same height', () => {
    const out = left?.line.at(-1);
    const into = right?.line[1];
    expect(out?.x).toBeCloseTo((into?.x ?? 0) + frame.width);
    expect(out?.y).toBeCloseTo(into?.y ?? 0);
  });

  it('keep a note that stays at its height', () => {
    const beads = [...(left?.right ?? []), ...(right?.right ?? [])].flatMap((hand) => hand.beads).map((bead) => Math.round(bead.y));
    expect(new Set(beads).size).toBe(2);
  });

  it('stay within their lanes and their panel', () => {
    for (const boxes of [left, right]) {
      for (const hand of boxes?.right ?? []) {
        for (const box of [...hand.blocks, ...hand.beads]) {
          expect(box.y).toBeGreaterThanOrEqual(frame.lanes.right.top - 1);
          expect(box.y + box.height).toBeLessThanOrEqual(frame.lanes.left.top + 1);
        }
      }
      for (const chord of boxes?.chords ?? []) expect(chord.lettering.x + chord.lettering.width).toBeLessThanOrEqual(frame.width);
    }
  });

  it('carry the bass over the barline with flat ends', () => {
    const out = left?.bass.at(-1);
    const into = right?.bass[0];
    expect(out?.flatRight).toBe(true);
    expect((out?.box.x ?? 0) + (out?.box.width ?? 0)).toBe(frame.width);
    expect(into).toMatchObject({ flatLeft: true, lettering: null, box: { x: 0 } });
  });
});
