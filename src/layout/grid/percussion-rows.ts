import { GRID_WORDS } from '../../words/grid';
import type { Panel } from './cards';
import { cellWidth, type Frame } from './frame';
import { PULSE } from './percussion-choice';

/** How a stroke is drawn: by its shape, so that it is told without colour. */
export type StrokeShape = 'accent' | 'open' | 'slap' | 'plain';

/** The shape of each kind of stroke; a kind that is not listed is plain. */
const SHAPES: Readonly<Record<string, StrokeShape>> = {
  accent: 'accent',
  mouth: 'accent',
  rimshot: 'accent',
  open: 'open',
  'open low': 'open',
  'soft open': 'open',
  'long scrape': 'open',
  slap: 'slap',
  'soft slap': 'slap',
  muffled: 'slap',
};

/** The shape of a kind of stroke: `mouth` gives `accent`. */
export const shapeOf = (stroke: string): StrokeShape => SHAPES[stroke] ?? 'plain';

/** One row of a panel: its label and its strokes, in units. */
export interface PercussionRow {
  readonly name: string;
  readonly label: string;
  readonly size: number;
  readonly labelY: number;
  readonly top: number;
  readonly strokes: readonly { readonly step: number; readonly shape: StrokeShape; readonly x: number; readonly y: number }[];
  /** Half the height of a stroke. */
  readonly radius: number;
}

/** The rows of a panel, one under the other below its bass. */
export function percussionRows(panel: Panel, frame: Frame, shown: readonly string[]): readonly PercussionRow[] {
  const cell = cellWidth(frame, panel.fullSteps);
  return frame.rows.flatMap((lane, at) => {
    const name = shown[at];
    if (name === undefined) return [];
    const size = (frame.stacked ? 22 : 16) * frame.enlarged;
    const radius = 8.5 * frame.enlarged;
    const y = lane.top + lane.height - radius - 3;
    const strokes = name === PULSE ? pulseOf(panel) : (panel.percussion.find((row) => row.name === name)?.strokes ?? []);
    return [
      {
        name,
        label: GRID_WORDS.instrumentName(name),
        size,
        labelY: lane.top + size * 0.86,
        top: lane.top,
        strokes: strokes.map(({ step, stroke }) => ({ step, shape: shapeOf(stroke), x: (step + 0.5) * cell, y })),
        radius,
      },
    ];
  });
}

function pulseOf(panel: Panel): readonly { readonly step: number; readonly stroke: string }[] {
  const beat = panel.fullSteps / 2;
  return Array.from({ length: Math.ceil(panel.steps / beat) }, (_, at) => ({ step: at * beat, stroke: at === 0 ? 'accent' : 'plain' }));
}
