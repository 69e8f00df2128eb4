import type { ReactNode } from 'react';
import type { Card } from '../../layout/grid/cards';
import type { Frame } from '../../layout/grid/frame';
import { GRID_WORDS } from '../../words/grid';
import { PanelGround, PanelHead } from './PanelHead';

/** What the large card is given when its music is written as a staff. */
export interface StaffCardProps {
  readonly card: Card;
  readonly frame: Frame;
  readonly inLoop: boolean;
  readonly saying: string | null;
  readonly staff: ReactNode;
  /** Stands over the headings. */
  readonly head: ReactNode;
  /** How much larger than its own size the staff is drawn. */
  readonly zoom: number;
  readonly onStartAt: (bar: number) => void;
  readonly children?: ReactNode;
}

/** The large card as written notes: the headings of its sides, and one staff under both. */
export function StaffCard({ card, frame, inLoop, saying, staff, head, zoom, onStartAt, children }: StaffCardProps) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would be announced as a form
    <div
      className="card now-card"
      role="group"
      aria-label={GRID_WORDS.gridName(GRID_WORDS.bars(card.fromBar, card.toBar))}
      data-loop={inLoop || undefined}
      data-panels={card.panels.length}
    >
      {head}
      <div className="panels heads">
        {card.panels.map((panel, at) => (
          <div
            key={panel.bar.index}
            className="panel"
            data-side={panel.side}
            data-tick={panel.bar.tick}
            data-ticks={panel.bar.ticks}
            data-full={panel.fullSteps}
          >
            <PanelGround panel={panel} />
            <PanelHead panel={panel} frame={frame} saying={at === 0 ? saying : null} onStartAt={onStartAt} />
          </div>
        ))}
      </div>
      <div className="staff-room" style={{ zoom }}>
        {staff}
      </div>
      {children}
    </div>
  );
}
