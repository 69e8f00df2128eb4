import { type KeyboardEvent, type ReactNode, useRef } from 'react';
import type { Card, CardNote, StepGrid } from '../../layout/grid/cards';
import { contourScale } from '../../layout/grid/contour';
import type { Frame } from '../../layout/grid/frame';
import { type PanelBoxes, panelBoxes } from '../../layout/grid/panel-boxes';
import type { Direction, Stroke } from '../../vocabulary';
import { GRID_WORDS } from '../../words/grid';
import { type Place, placeAfterKey } from './grid-keys';
import { PanelView } from './PanelView';
import { useTradedPlaces } from './use-traded-places';

export interface CardViewProps {
  readonly grid: StepGrid;
  readonly card: Card;
  readonly frame: Frame;
  readonly direction: Direction;
  readonly inLoop: boolean;
  readonly selected: Stroke | null;
  /** The cell that takes the Tab key. */
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
  readonly onEnter: (place: Place) => void;
  readonly onStartAt: (bar: number) => void;
  readonly onStroke: (stroke: Stroke) => void;
  readonly staff: ReactNode;
  /** Shown over the card: the sentence about a stroke. */
  readonly children?: ReactNode;
}

/** The large card: one clave cycle, its panels side by side or one above the other. One tab stop; the arrows go through its cells and on to the cards around it. */
export function CardView(props: CardViewProps) {
  const { grid, card, frame, place, onPlace, onEnter, onStartAt } = props;
  const rows = useRef<HTMLDivElement>(null);
  useTradedPlaces(rows, props.direction);
  const boxes = cardBoxes(grid, card, frame);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.altKey || event.metaKey) return;
    if (event.key === 'Enter') {
      if (event.shiftKey) onStartAt(place.bar);
      else onEnter(place);
    } else {
      const next = placeAfterKey(grid, place, event.key, event.ctrlKey);
      if (!next) return;
      onPlace(next);
    }
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: the drawing inside is no table
    <div
      className="card now-card"
      role="grid"
      aria-label={GRID_WORDS.gridName(GRID_WORDS.bars(card.fromBar, card.toBar))}
      aria-describedby="grid-keys"
      data-loop={props.inLoop || undefined}
      data-panels={card.panels.length}
      onKeyDown={onKeyDown}
    >
      <div className="panels" role="presentation" ref={rows}>
        {card.panels.map((panel, at) => (
          <PanelView
            key={card.panels.length === 2 && card.panels[0]?.side === card.panels[1]?.side ? `bar ${at}` : `side ${panel.side}`}
            panel={panel}
            boxes={boxes[at] as PanelBoxes}
            saying={at === 0 ? sayingOf(card) : null}
            selected={props.selected}
            tabStep={place.bar === panel.bar.index ? place.step : null}
            onCell={(bar, step) => onPlace({ bar, step })}
            onStartAt={onStartAt}
            onStroke={props.onStroke}
            staff={at === 0 ? props.staff : null}
          />
        ))}
      </div>
      {props.children}
    </div>
  );
}

/** The boxes of every panel of a card. */
function cardBoxes(grid: StepGrid, card: Card, frame: Frame): readonly PanelBoxes[] {
  const form = grid.cards.flatMap((each) => each.panels);
  const scale = contourScale(card.panels, form, frame.lanes.right, frame.type.mark);
  const lows = card.panels.flatMap((panel) => panel.left.map((mark) => mark.stroke.midi[0] ?? 60));
  const range = { low: Math.min(...lows, 127), high: Math.max(...lows, 0) };
  const first = form.findIndex((panel) => panel.bar.tick === grid.fromTick);
  const last = form.findIndex((panel) => panel.bar.tick + panel.bar.ticks === grid.toTick);
  return card.panels.map((panel) => {
    const here = panel.bar.index;
    const before = (grid.closed && here === first ? form[last] : form[here - 1]) ?? null;
    const after = (grid.closed && here === last ? form[first] : form[here + 1]) ?? null;
    return panelBoxes(panel, frame, scale, range, { before, after, opens: frame.stacked || panel === card.panels[0] });
  });
}

/** The card's notes in words, or null. */
export function sayingOf(card: Card): string | null {
  const words: Record<CardNote, string> = {
    'other side': GRID_WORDS.beginsOn(card.section, card.side),
    'lone bar': GRID_WORDS.loneBar(card.section),
    'half side': GRID_WORDS.halfSide,
    restart: GRID_WORDS.restart,
  };
  return card.notes.length === 0 ? null : card.notes.map((note) => words[note]).join(' · ');
}
