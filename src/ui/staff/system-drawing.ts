import type { Notation } from '../../layout/notation/notation';
import type { SystemGeometry } from '../../layout/notation/system-geometry';

/** One system to draw: its places, and the notation whose bar `from` is its first. */
export interface SystemDrawing {
  readonly notation: Notation;
  readonly from: number;
  readonly geometry: SystemGeometry;
}

/** A drawn note with the time it sounds (absolute ticks), for lighting it. */
export interface DrawnNote {
  readonly tick: number;
  readonly endTick: number;
  readonly element: SVGElement;
}
