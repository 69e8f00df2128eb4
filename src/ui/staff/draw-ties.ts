import { type StaveNote, StaveTie, type SVGContext } from 'vexflow/core';
import type { NotatedEvent, StaffName } from '../../layout/notation/notation';
import type { SystemDrawing } from './system-drawing';

/** A note on its stave. */
export interface PlacedNote {
  readonly staff: StaffName;
  readonly note: StaveNote;
  readonly event: NotatedEvent;
  readonly barTick: number;
  /** Room that repeat signs take at the end of its bar. */
  readonly endRoom: number;
}

/** VexFlow's word for a tie that curves upwards. */
const UP = -1;
const DOWN = 1;

/**
 * The ties of one staff of a system: one for each note head, the upper half of a chord curving up and the lower half down. A tie
 * that leaves or enters the system is drawn as a half; so is one that rings on into the next pass, and one that leads from or to a bar that
 * is not its neighbour on paper (round a repeat, into a later ending).
 */
export function drawTies(context: SVGContext, notes: readonly PlacedNote[], drawing: SystemDrawing): void {
  const sounding = notes.filter((placed) => placed.event.kind === 'notes' || placed.event.kind === 'stroke');
  const entered = barsEnteredFromElsewhere(drawing);
  sounding.forEach((placed, i) => {
    const next = sounding[i + 1];
    const fromBefore = placed.event.tieIn && placed.event.tick === 0 && entered.has(placed.barTick);
    const goesOn = placed.event.tieOut && next?.event.tieIn && (next.barTick === placed.barTick || !entered.has(next.barTick));
    (placed.event.kind === 'stroke' ? [null] : placed.event.pitches).forEach((_, index) => {
      const direction = tieDirection(placed.event, index);
      if (fromBefore) tie(context, null, placed, index, direction);
      if (placed.event.tieOut || placed.event.ringsOn) tie(context, placed, goesOn ? next : null, index, direction);
    });
  });
}

/** Ticks of the bars whose music does not go on from the bar to their left: the first of the system, and those after a jump. */
function barsEnteredFromElsewhere({ geometry, notation, from }: SystemDrawing): ReadonlySet<number> {
  const ticks = geometry.bars.map((bar) => bar.tick).filter((tick, i) => i === 0 || endOf(notation.bars[from + i - 1]) !== tick);
  return new Set(ticks);
}

const endOf = (bar: { readonly tick: number; readonly ticks: number } | undefined): number => (bar ? bar.tick + bar.ticks : 0);

function tieDirection(event: NotatedEvent, index: number): number {
  const count = event.pitches.length;
  if (count <= 1) return event.stem === 'up' ? DOWN : UP;
  return index >= count / 2 ? UP : DOWN;
}

function tie(context: SVGContext, first: PlacedNote | null, last: PlacedNote | null, index: number, direction: number): void {
  const drawn = new StaveTie({
    ...(first ? { firstNote: first.note } : {}),
    ...(last ? { lastNote: last.note } : {}),
    firstIndexes: [index],
    lastIndexes: [index],
  });
  drawn.setDirection(direction);
  if (first && !last) drawn.renderOptions.lastXShift = -first.endRoom;
  drawn.setStyle({ fillStyle: 'currentColor', strokeStyle: 'currentColor' });
  drawn.setContext(context).drawWithStyle();
}
