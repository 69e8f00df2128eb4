/** What is known of one step of the clave cycle: how often it was asked for, missed or played unasked, and where it fell in milliseconds (negative: early). */
export interface StepFacts {
  readonly cycleStep: number;
  readonly asked: number;
  readonly missed: number;
  readonly extra: number;
  readonly meanMs: number | null;
  readonly spreadMs: number | null;
}

/** One step of the picture, in units: its column, and where its strokes fell. */
export interface PictureStep {
  readonly cycleStep: number;
  readonly x: number;
  readonly asked: boolean;
  /** Middle of the strokes, and the ends of their spread; null with too few. Up is early. */
  readonly dot: { readonly y: number; readonly top: number; readonly bottom: number } | null;
  /** Strokes missed there, and strokes nobody asked for. */
  readonly missed: number;
  readonly extra: number;
}

/** The picture of a clave cycle, in units. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly middle: number;
  readonly cell: number;
  /** Milliseconds at the upper and lower edge. */
  readonly edgeMs: number;
  readonly steps: readonly PictureStep[];
}

const CELL = 36;
const HEIGHT = 150;
const MARGIN = 18;
/** The picture spans at least this, so that small differences look small. */
const LEAST_EDGE_MS = 40;

/** Where the strokes of each step fell, to be drawn. Means and spreads beyond the edge are held at the edge. */
export function stepPicture(steps: readonly StepFacts[]): Picture {
  const reach = steps.map(({ meanMs, spreadMs }) => (meanMs === null ? 0 : Math.abs(meanMs) + (spreadMs ?? 0)));
  const edgeMs = Math.ceil(Math.max(LEAST_EDGE_MS, ...reach) / 20) * 20;
  const middle = HEIGHT / 2;
  const y = (ms: number) => middle + (Math.max(-edgeMs, Math.min(edgeMs, ms)) / edgeMs) * (middle - MARGIN);
  return {
    width: CELL * steps.length,
    height: HEIGHT,
    middle,
    cell: CELL,
    edgeMs,
    steps: steps.map(({ cycleStep, asked, meanMs, spreadMs, missed, extra }, index) => ({
      cycleStep,
      x: (index + 0.5) * CELL,
      asked: asked > 0,
      missed,
      extra,
      dot: meanMs === null ? null : { y: y(meanMs), top: y(meanMs - (spreadMs ?? 0)), bottom: y(meanMs + (spreadMs ?? 0)) },
    })),
  };
}
