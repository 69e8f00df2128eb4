import { type MouseEvent, memo, type ReactNode } from 'react';
import type { Cell, Panel } from '../../layout/grid/cards';
import type { PanelBoxes } from '../../layout/grid/panel-boxes';
import type { PartName } from '../../performance/performance';
import type { Stroke } from '../../vocabulary';
import { barName, GRID_WORDS, sideName } from '../../words/grid';
import { PanelDrawing } from './PanelDrawing';
import { laneAt, strokeAt } from './touch';

/** What a panel is given. */
export interface PanelViewProps {
  readonly panel: Panel;
  readonly boxes: PanelBoxes;
  /** What the card has to say at this panel, or nothing. */
  readonly saying: string | null;
  readonly selected: Stroke | null;
  readonly silent: readonly PartName[];
  /** Step whose cell takes the Tab key, or null when it lies in another panel. */
  readonly tabStep: number | null;
  readonly onCell: (bar: number, step: number) => void;
  readonly onStartAt: (bar: number) => void;
  readonly onStroke: (stroke: Stroke) => void;
  readonly staff: ReactNode;
}

/** One side of the clave: its name, its lanes, and over them the cells that are touched and named. */
export const PanelView = memo(function PanelView(props: PanelViewProps) {
  const { panel, boxes, saying, selected, silent, tabStep, onCell, onStartAt, onStroke, staff } = props;
  const { bar, side } = panel;
  const touch = (event: MouseEvent<HTMLElement>, cell: Cell) => {
    onCell(bar.index, cell.step);
    const box = event.currentTarget.getBoundingClientRect();
    const lane = laneAt(boxes.frame, box.height > 0 ? (event.clientY - box.top) / box.height : 1);
    if (lane === 'bar') onStartAt(bar.index);
    else {
      const stroke = strokeAt(panel, cell, lane);
      if (stroke) onStroke(stroke);
    }
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: the drawing inside is no table
    // biome-ignore lint/a11y/useFocusableInteractive: the cells take the focus, not the row
    <div
      className="panel"
      role="row"
      data-side={side}
      data-tick={bar.tick}
      data-ticks={bar.ticks}
      data-steps={panel.steps}
      data-full={panel.fullSteps}
    >
      <div className="panel-ground" aria-hidden="true">
        {panel.sides.map((run) => (
          <i
            key={run.from}
            data-side={run.side}
            style={{ left: `${(run.from / panel.fullSteps) * 100}%`, width: `${((run.to - run.from) / panel.fullSteps) * 100}%` }}
          />
        ))}
      </div>
      <div className="now-column" style={{ width: `${100 / panel.fullSteps}%` }} aria-hidden="true" />
      <div className="now-line" aria-hidden="true" />
      {/* biome-ignore lint/a11y/useSemanticElements: the drawing below is no table */}
      {/* biome-ignore lint/a11y/useFocusableInteractive: by keyboard a bar is started from its cells */}
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: by keyboard a bar is started from its cells */}
      <div
        className="panel-head"
        role="rowheader"
        style={{ height: `${(boxes.frame.lanes.side.height / boxes.frame.width) * 100}cqw` }}
        onClick={() => onStartAt(bar.index)}
        title={GRID_WORDS.startAt(bar.index + 1, side)}
      >
        <span className="side-name">{sideName(side)}</span>
        <span className="pips" aria-hidden="true">
          {'◆'.repeat(side)}
        </span>
        <span className="bar-name">
          {barName(bar.index + 1)}
          {panel.sectionBar === 1 && <b> · {bar.section}</b>}
        </span>
        <span className="texture" aria-hidden="true" />
        {saying && <span className="saying">{saying}</span>}
      </div>
      {staff ?? <PanelDrawing panel={panel} boxes={boxes} selected={selected} silent={silent} />}
      <div className="cells" role="presentation" style={{ top: `${(boxes.frame.lanes.chords.top / boxes.frame.width) * 100}cqw` }}>
        {panel.cells.map((cell) => (
          // biome-ignore lint/a11y/useSemanticElements: the drawing below is no table
          // biome-ignore lint/a11y/useKeyWithClickEvents: the grid around it answers the keys
          <div
            key={cell.step}
            role="gridcell"
            className="cell"
            aria-label={cell.label}
            data-bar={bar.index}
            data-step={cell.step}
            tabIndex={tabStep === cell.step ? 0 : -1}
            style={{ width: `${100 / panel.fullSteps}%` }}
            onClick={(event) => touch(event, cell)}
          />
        ))}
      </div>
    </div>
  );
});
