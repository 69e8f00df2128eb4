import { cellWidth } from '../../layout/grid/frame';
import { TICKS_PER_STEP } from '../../vocabulary';
import type { PanelOver } from '../practise/board-props';

/** Rings about the clave strokes (by score tick) that meet a stroke of the take that is heard. */
export function metOver(met: readonly number[]): PanelOver {
  return ({ bar, fullSteps }, frame) => {
    const here = met.filter((tick) => tick >= bar.tick && tick < bar.tick + bar.ticks);
    const cell = cellWidth(frame, fullSteps);
    const { lanes, width, height, enlarged } = frame;
    const y = lanes.clave.top + lanes.clave.height / 2;
    return (
      <svg className="verdicts" viewBox={`0 ${lanes.chords.top} ${width} ${height - lanes.chords.top}`} aria-hidden="true">
        {here.map((tick) => (
          <circle key={tick} className="met" cx={((tick - bar.tick) / TICKS_PER_STEP + 0.5) * cell} cy={y} r={21 * enlarged} />
        ))}
      </svg>
    );
  };
}
