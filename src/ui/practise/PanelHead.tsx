import type { Panel } from '../../layout/grid/cards';
import type { Frame } from '../../layout/grid/frame';
import { GRID_WORDS } from '../../words/grid';

/** What the heading of a panel is given. */
export interface PanelHeadProps {
  readonly panel: Panel;
  readonly frame: Frame;
  /** What the card has to say at this panel, or nothing. */
  readonly saying: string | null;
  /** `rowheader` inside the grid; nothing beside the staff. */
  readonly role?: 'rowheader';
  readonly onStartAt: (bar: number) => void;
}

/** The side in words, in pips and in texture, the bar, and what there is to say. */
export function PanelHead({ panel, frame, saying, role, onStartAt }: PanelHeadProps) {
  const { bar, side } = panel;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: by keyboard a bar is started from its cells, or from the bars of the staff
    // biome-ignore lint/a11y/useKeyWithClickEvents: by keyboard a bar is started from its cells, or from the bars of the staff
    <div
      className="panel-head"
      role={role}
      style={{ height: `${(frame.lanes.side.height / frame.width) * 100}cqw` }}
      onClick={() => onStartAt(bar.index)}
      title={GRID_WORDS.startAt(bar.index + 1, side)}
    >
      <span className="side-name">{GRID_WORDS.sideName(side)}</span>
      <span className="pips" aria-hidden="true">
        {'◆'.repeat(side)}
      </span>
      <span className="bar-name">
        {GRID_WORDS.barName(bar.index + 1)}
        {panel.sectionBar === 1 && <b> · {bar.section}</b>}
      </span>
      <span className="texture" aria-hidden="true" />
      {saying && <span className="saying">{saying}</span>}
    </div>
  );
}

/** The tints of a panel's sides, behind everything. */
export function PanelGround({ panel }: { readonly panel: Panel }) {
  return (
    <span className="panel-ground" aria-hidden="true">
      {panel.sides.map((run) => (
        <i
          key={run.from}
          data-side={run.side}
          style={{ left: `${(run.from / panel.fullSteps) * 100}%`, width: `${((run.to - run.from) / panel.fullSteps) * 100}%` }}
        />
      ))}
    </span>
  );
}
