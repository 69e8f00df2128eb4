import type { Panel } from '../../layout/grid/cards';
import type { Frame } from '../../layout/grid/frame';
import { type PercussionRow, percussionRows } from '../../layout/grid/percussion-rows';
import { lit } from './Marks';
import { StrokeMark } from './StrokeMark';

/** What the percussion of a panel is given. */
export interface PercussionRowsProps {
  readonly panel: Panel;
  readonly frame: Frame;
  /** Instruments from the top, one to a row. */
  readonly shown: readonly string[];
}

/** The percussion of a panel under its bass: a row to an instrument, its name and its strokes by shape. */
export function PercussionRows({ panel, frame, shown }: PercussionRowsProps) {
  return (
    <g className="percussion">
      {percussionRows(panel, frame, shown).map((row) => (
        <Row key={row.name} row={row} panel={panel} width={frame.width} />
      ))}
    </g>
  );
}

function Row({ row, panel, width }: { readonly row: PercussionRow; readonly panel: Panel; readonly width: number }) {
  return (
    <>
      <line className="row-line" x1={0} x2={width} y1={row.top} y2={row.top} />
      <text className="row-name" x={10} y={row.labelY} fontSize={row.size}>
        {row.label}
      </text>
      {row.strokes.map(({ step, shape, x, y }) => (
        <g key={step} {...lit(panel, step, 1)}>
          <StrokeMark shape={shape} x={x} y={y} radius={row.radius} />
        </g>
      ))}
    </>
  );
}
