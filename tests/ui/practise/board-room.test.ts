import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameOf, PANEL_WIDTH } from '../../../src/layout/grid/frame';
import { nextHeight } from '../../../src/layout/grid/next-sizes';
import { boardRoom, type RoomWishes } from '../../../src/ui/practise/board-room';

/** Heights in px of what `boardRoom` hands out, worked out the long way. */
function heights(width: number, height: number, wishes: RoomWishes = {}, top = 60) {
  const room = boardRoom({ width, height, top }, true, wishes);
  const pair = width / (2 * PANEL_WIDTH);
  const frame = frameOf(room.stacked, room.nowUnits, room.enlarged, { rows: room.rows });
  const now = room.stacked ? 2 * frame.height * 2 * pair : frame.height * pair;
  return { room, now, next: nextHeight(room.stacked, room.enlarged) * pair };
}

describe("the board's room", () => {
  // Windows 1280 × 930, 1280 × 800, 1180 × 820, 1366 × 768, 768 × 1024 and 390 × 844, less header, margins and transport of the page.
  it.each([
    [1240, 778],
    [1240, 650],
    [1140, 670],
    [1326, 616],
    [728, 870],
    [366, 702],
  ])('keeps the whole next card above the transport on %i × %i', (width, height) => {
    const { now, next } = heights(width, height);
    expect(60 + now + next + 3 * 8).toBeLessThanOrEqual(height + 2);
  });

  it.each([
    [1240, 778],
    [1240, 650],
    [1326, 616],
    [728, 870],
    [366, 702],
  ])('keeps the next card in view with percussion and a line over the card on %i × %i', (width, height) => {
    const { now, next, room } = heights(width, height, { rows: 6, fewRows: 2, banner: true });
    const lines = 36 + (room.stacked ? 48 : 28);
    expect(60 + now + next + lines + 3 * 8).toBeLessThanOrEqual(height + 2);
  });

  it('gives percussion all its rows where there is room, and the few that matter most where there is little', () => {
    expect(heights(1240, 1100, { rows: 5, fewRows: 2 }).room.rows).toBe(5);
    const little = heights(1240, 690, { rows: 5, fewRows: 2 }).room.rows;
    expect(little).toBeGreaterThanOrEqual(1);
    expect(little).toBeLessThan(5);
    expect(heights(1240, 400, { rows: 5, fewRows: 2 }).room.rows).toBe(0);
    // Asked for, two rows find their place on a window of 1280 × 800.
    expect(heights(1240, 670, { rows: 5, fewRows: 2, asked: true }, 48).room.rows).toBeGreaterThanOrEqual(2);
  });

  it('keeps the sizes asked for on a 10-inch tablet in landscape, with the hand strip above the transport', () => {
    // A window of 1280 × 800: header 46, transport 84, title and map 48.
    const { room, now, next } = heights(1240, 670, {}, 48);
    expect(room.enlarged).toBe(1);
    expect(48 + now + next + room.stripPx + 4 * 8).toBeLessThanOrEqual(670 + 1);
  });

  it('stacks the panels on narrow screens only, and draws larger only where there is height to spare', () => {
    expect(boardRoom({ width: 699, height: 700, top: 60 }, true).stacked).toBe(true);
    expect(boardRoom({ width: 700, height: 700, top: 60 }, true).stacked).toBe(false);
    // A phone lying on its side.
    expect(boardRoom({ width: 620, height: 312, top: 0 }, true).stacked).toBe(false);
    expect(boardRoom({ width: 728, height: 870, top: 60 }, true).enlarged).toBeGreaterThan(1);
  });

  it('never gives the sounding card less than it needs, on any screen', () => {
    fc.assert(
      fc.property(fc.integer({ min: 320, max: 2600 }), fc.integer({ min: 200, max: 1800 }), (width, height) => {
        const { room } = heights(width, height);
        expect(room.nowUnits).toBeGreaterThanOrEqual(frameOf(room.stacked, 0, room.enlarged).height);
        expect(room.enlarged).toBeGreaterThanOrEqual(0.3);
      }),
    );
  });
});
