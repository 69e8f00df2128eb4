import { headX, type SystemGeometry } from '../../layout/notation/system-geometry';
import type { DrawnNote } from './system-drawing';

/** Half a note head, so that the line runs through its middle. */
const HALF_HEAD = 6;
/** A beat, by which the line steps where motion is to be reduced. */
const BEAT_TICKS = 480;

/** What the frame loop moves in one system. Everything happens on the elements themselves, never through React. */
export interface LiveSystem {
  readonly fromTick: number;
  readonly toTick: number;
  readonly geometry: SystemGeometry;
  /** The system's block, and the line in it. */
  readonly block: HTMLElement;
  readonly line: HTMLElement;
  /** The notes drawn at present; none while the system is not engraved. */
  readonly notes: { readonly current: readonly DrawnNote[] };
}

/** Moves the line of a system to a tick and lights the notes that sound there; null clears it. */
export function showHeard(system: LiveSystem, tick: number | null, reduceMotion: boolean): void {
  for (const note of system.notes.current) note.element.classList.toggle('lit', tick !== null && note.tick <= tick && tick < note.endTick);
  system.line.style.visibility = tick === null ? 'hidden' : 'visible';
  if (tick === null) return;
  const shown = reduceMotion ? Math.floor((tick - system.fromTick) / BEAT_TICKS) * BEAT_TICKS + system.fromTick : tick;
  const share = (headX(system.geometry, shown) + HALF_HEAD) / system.geometry.width;
  system.line.style.transform = `translateX(${(share * system.block.clientWidth).toFixed(1)}px)`;
}
