import type { Cell, Panel } from '../../layout/grid/cards';
import type { Frame } from '../../layout/grid/frame';
import type { Stroke } from '../../vocabulary';

/** What a touch in a cell means: the bar itself (chords, count, clave), a stroke of a part, or the percussion. */
export type TouchLane = 'bar' | 'right' | 'left' | 'bass' | 'percussion';

/** The lane at a height within the cells, from 0 (top of the chords) to 1 (bottom). */
export function laneAt(frame: Frame, share: number): TouchLane {
  const top = frame.lanes.chords.top;
  const y = top + share * (frame.height - top);
  if (y < frame.lanes.right.top) return 'bar';
  if (y < frame.lanes.left.top) return 'right';
  if (y < frame.lanes.bass.top) return 'left';
  return y <= frame.lanes.bass.top + frame.lanes.bass.height ? 'bass' : 'percussion';
}

/**
 * The stroke that a touch finds, `across` its cell from 0 to 1: the one struck in the cell (of two sixteenths the one on that half),
 * else, with `ringing`, the one that rings through it.
 */
export function strokeAt(panel: Panel, cell: Cell, lane: TouchLane, across = 0, ringing = true): Stroke | null {
  if (lane === 'bar' || lane === 'percussion') return null;
  const later = across >= 0.5 && panel[lane].find((mark) => cell.later.some((stroke) => stroke === mark.stroke));
  if (later) return later.stroke;
  const struck = lane === 'bass' && panel.doubled && cell.left ? cell.left : cell[lane];
  if (struck || (!ringing && lane !== 'bass')) return struck;
  return panel[lane].find((mark) => mark.step < cell.step + 1 && mark.step + mark.steps > cell.step)?.stroke ?? null;
}

/** All strokes of a cell, right hand first: what Enter goes round. A bass note that the left hand plays too comes once. */
export function strokesOf(cell: Cell): readonly Stroke[] {
  const shared = cell.left !== null && cell.bass !== null && cell.left.midi.join() === cell.bass.midi.join();
  return [cell.right, cell.left, ...cell.later, shared ? null : cell.bass].filter((stroke) => stroke !== null);
}
