import { type MouseEvent, memo } from 'react';
import type { Cell, Panel } from '../../layout/grid/cards';
import type { PanelBoxes } from '../../layout/grid/panel-boxes';
import type { PartName } from '../../performance/performance';
import type { Stroke } from '../../vocabulary';
import { GRID_WORDS } from '../../words/grid';
import type { EditedPlace, PanelOver } from './board-props';
import { PanelDrawing } from './PanelDrawing';
import { PanelGround, PanelHead } from './PanelHead';
import { laneAt, strokeAt, type TouchLane } from './touch';

/** What a panel is given. */
export interface PanelViewProps {
  readonly panel: Panel;
  readonly boxes: PanelBoxes;
  /** Instruments of the percussion that have a row, from the top. */
  readonly rows: readonly string[];
  /** What the card has to say at this panel, or nothing. */
  readonly saying: string | null;
  readonly selected: Stroke | null;
  readonly silent: readonly PartName[];
  /** Places changed by hand, in the whole form. */
  readonly edits: readonly EditedPlace[];
  /** Step whose cell takes the Tab key, or null when it lies in another panel. */
  readonly tabStep: number | null;
  /** True when a touch beside a stroke is a place for a new one, not the stroke that rings there. */
  readonly editing: boolean;
  readonly over: PanelOver | null;
  readonly onCell: (bar: number, step: number) => void;
  readonly onStartAt: (bar: number) => void;
  readonly onTouch: (cell: Cell, lane: TouchLane, stroke: Stroke | null) => void;
}

/** One side of the clave: its name, its lanes, and over them the cells that are touched and named. */
export const PanelView = memo(function PanelView(props: PanelViewProps) {
  const { panel, boxes, rows, saying, selected, silent, edits, tabStep, editing, onCell, onStartAt, onTouch } = props;
  const { bar, side } = panel;
  const edited = [...new Set(edits.filter((edit) => edit.bar === bar.index).map(({ step }) => step))];
  const touch = (event: MouseEvent<HTMLElement>, cell: Cell) => {
    onCell(bar.index, cell.step);
    const box = event.currentTarget.getBoundingClientRect();
    const lane = laneAt(boxes.frame, box.height > 0 ? (event.clientY - box.top) / box.height : 1);
    const across = box.width > 0 ? (event.clientX - box.left) / box.width : 0;
    if (lane === 'bar') onStartAt(bar.index);
    else onTouch(cell, lane, strokeAt(panel, cell, lane, across, !editing));
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
      <PanelGround panel={panel} />
      <div className="now-column" style={{ width: `${100 / panel.fullSteps}%` }} aria-hidden="true" />
      <div className="now-line" aria-hidden="true" />
      <PanelHead panel={panel} frame={boxes.frame} saying={saying} role="rowheader" onStartAt={onStartAt} />
      <PanelDrawing panel={panel} boxes={boxes} selected={selected} silent={silent} edited={edited} rows={rows} />
      {props.over?.(panel, boxes.frame)}
      <div className="cells" role="presentation" style={{ top: `${(boxes.frame.lanes.chords.top / boxes.frame.width) * 100}cqw` }}>
        {panel.cells.map((cell) => (
          // biome-ignore lint/a11y/useSemanticElements: the drawing below is no table
          // biome-ignore lint/a11y/useKeyWithClickEvents: the grid around it answers the keys
          <div
            key={cell.step}
            role="gridcell"
            className="cell"
            aria-label={edited.includes(cell.step) ? `${cell.label}, ${GRID_WORDS.byHand}` : cell.label}
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
