import type { Cell, Panel } from '../../layout/grid/cards';
import type { Frame } from '../../layout/grid/frame';
import type { Stroke } from '../../vocabulary';

/** What a touch in a cell means: the bar itself (chords, count, clave), or a stroke of a part. */
export type TouchLane = 'bar' | 'right' | 'left' | 'bass';

/** The lane at a height within the cells, from 0 (top of the chords) to 1 (bottom). */
export function laneAt(frame: Frame, share: number): TouchLane {
  const top = frame.lanes.chords.top;
  const y = top + share * (frame.height - top);
  if (y < frame.lanes.right.top) return 'bar';
  if (y < frame.lanes.left.top) return 'right';
  return y < frame.lanes.bass.top ? 'left' : 'bass';
}

/** The stroke that a touch finds: the one struck in the cell, else the one that rings through it, else (bass apart) nothing. */
export function strokeAt(panel: Panel, cell: Cell, lane: TouchLane): Stroke | null {
  if (lane === 'bar') return null;
  const struck = cell[lane];
  if (struck) return struck;
  const ringing = panel[lane].find((mark) => mark.step < cell.step + 1 && mark.step + mark.steps > cell.step);
  return ringing?.stroke ?? null;
}

/** All strokes of a cell, right hand first: what Enter goes round. */
export function strokesOf(cell: Cell): readonly Stroke[] {
  return [cell.right, cell.left, cell.bass].filter((stroke) => stroke !== null);
}
