import { lazy, Suspense } from 'react';
import type { Panel } from '../../layout/grid/cards';
import type { PanelBoxes } from '../../layout/grid/panel-boxes';
import type { PartName } from '../../performance/performance';
import type { Stroke } from '../../vocabulary';
import { BassDrawing, ChordDrawing, diamond, HandDrawing, lit } from './Marks';
import { Counts, Rules, Silence } from './PanelRules';

/** What the drawing of a panel is given. */
export interface PanelDrawingProps {
  readonly panel: Panel;
  readonly boxes: PanelBoxes;
  readonly selected: Stroke | null;
  /** Parts that do not sound. */
  readonly silent: readonly PartName[];
  /** Steps whose stroke was changed by hand. */
  readonly edited: readonly number[];
  /** Instruments of the percussion that have a row, from the top. */
  readonly rows: readonly string[];
}

/** The caret of a hand that corrects, under a stroke that was changed. */
const handSign = (x: number, y: number): string => `M${x - 13} ${y}L${x} ${y - 11}L${x + 13} ${y}`;

const PercussionRows = lazy(() => import('./PercussionRows').then((module) => ({ default: module.PercussionRows })));

/** The lanes of a panel below its heading, as one drawing. Marks carry the ticks between which they are lit. */
export function PanelDrawing({ panel, boxes, selected, silent, edited, rows }: PanelDrawingProps) {
  const { width, height, lanes } = boxes.frame;
  const cut = 100 * (1 - panel.steps / panel.fullSteps);
  const quiet = (part: PartName) => silent.includes(part) || undefined;
  return (
    <svg
      className="panel-drawing"
      viewBox={`0 ${lanes.chords.top} ${width} ${height - lanes.chords.top}`}
      style={cut > 0 ? { clipPath: `inset(0 ${cut}% 0 0)` } : undefined}
      aria-hidden="true"
    >
      <Rules panel={panel} boxes={boxes} />
      {boxes.line.length > 1 && <polyline className="octave-line" points={boxes.line.map(({ x, y }) => `${x},${y}`).join(' ')} />}
      {boxes.chords.map((chord) => (
        <ChordDrawing key={`${chord.mark.step} ${chord.mark.kind}`} chord={chord} />
      ))}
      <Counts panel={panel} boxes={boxes} />
      {boxes.diamonds.map(({ x, y }, at) => (
        <path key={x} className="diamond" d={diamond(x, y, 15 * boxes.frame.enlarged)} {...lit(panel, panel.claveSteps[at] ?? 0, 1)} />
      ))}
      <g data-silent={quiet('piano right')}>
        {boxes.right.map((hand) => (
          <HandDrawing key={hand.mark.step} hand={hand} panel={panel} className="right-hand" selected={selected} radius={6} />
        ))}
      </g>
      <g data-silent={quiet('piano left')}>
        {boxes.left.map((hand) => (
          <HandDrawing key={hand.mark.step} hand={hand} panel={panel} className="left-hand" selected={selected} radius={3} />
        ))}
      </g>
      <g data-silent={panel.doubled ? quiet('bass') && quiet('piano left') : quiet('bass')}>
        {boxes.bass.map((bass) => (
          <BassDrawing key={`${bass.mark.step} ${bass.mark.stroke.midi[0]}`} bass={bass} panel={panel} selected={selected} />
        ))}
      </g>
      {rows.length > 0 && (
        <Suspense fallback={null}>
          <g data-silent={quiet('percussion')}>
            <PercussionRows panel={panel} frame={boxes.frame} shown={rows} />
          </g>
        </Suspense>
      )}
      {edited.map((step) => (
        <path key={step} className="by-hand" d={handSign((step + 0.5) * boxes.cell, lanes.right.top + lanes.right.height - 3)} />
      ))}
      <Silence panel={panel} boxes={boxes} />
    </svg>
  );
}
