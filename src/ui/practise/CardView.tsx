import { type KeyboardEvent, type ReactNode, useRef } from 'react';
import { cardBoxes } from '../../layout/grid/card-boxes';
import type { Card, CardNote, Cell, StepGrid } from '../../layout/grid/cards';
import type { Frame } from '../../layout/grid/frame';
import type { PanelBoxes } from '../../layout/grid/panel-boxes';
import type { PartName } from '../../performance/performance';
import type { Direction, Stroke } from '../../vocabulary';
import { GRID_WORDS } from '../../words/grid';
import type { EditedPlace, PanelOver } from './board-props';
import { type Place, placeAfterKey } from './grid-keys';
import { PanelView } from './PanelView';
import type { TouchLane } from './touch';
import { useTradedPlaces } from './use-traded-places';

/** What the large card is given. */
export interface CardViewProps {
  readonly grid: StepGrid;
  readonly card: Card;
  readonly frame: Frame;
  readonly direction: Direction;
  readonly inLoop: boolean;
  readonly selected: Stroke | null;
  readonly silent: readonly PartName[];
  /** Places changed by hand, in the whole form. */
  readonly edits: readonly EditedPlace[];
  /** The cell that takes the Tab key. */
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
  readonly onEnter: (place: Place) => void;
  readonly onStartAt: (bar: number) => void;
  readonly onTouch: (bar: number, cell: Cell, lane: TouchLane, stroke: Stroke | null) => void;
  readonly editing: boolean;
  /** What there is to say at the first panel, or nothing. */
  readonly saying: string | null;
  /** Instruments of the percussion that have a row. */
  readonly rows: readonly string[];
  readonly over: PanelOver | null;
  /** Stands over the panels, inside the card. */
  readonly head?: ReactNode;
  /** Stands under the panels or floats over the card. */
  readonly children?: ReactNode;
}

/** The large card: one clave cycle, its panels side by side or one above the other. One tab stop; the arrows go through its cells and on to the cards around it. */
export function CardView(props: CardViewProps) {
  const { grid, card, frame, place, onPlace, onEnter, onStartAt, onTouch } = props;
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
    <div className="card now-card" data-loop={props.inLoop || undefined} data-panels={card.panels.length}>
      {props.head}
      {/* biome-ignore lint/a11y/useSemanticElements: the drawing inside is no table */}
      <div
        className="panels"
        role="grid"
        aria-label={GRID_WORDS.gridName(GRID_WORDS.bars(card.fromBar, card.toBar))}
        aria-describedby="grid-keys"
        ref={rows}
        onKeyDown={onKeyDown}
      >
        {card.panels.map((panel, at) => (
          <PanelView
            // biome-ignore lint/suspicious/noArrayIndexKey: by place, so that an exchange of the sides moves nothing but what slides
            key={at}
            panel={panel}
            boxes={boxes[at] as PanelBoxes}
            rows={props.rows}
            saying={at === 0 ? props.saying : null}
            selected={props.selected}
            silent={props.silent}
            edits={props.edits}
            tabStep={place.bar === panel.bar.index ? place.step : null}
            onCell={(bar, step) => onPlace({ bar, step })}
            onStartAt={onStartAt}
            editing={props.editing}
            over={props.over}
            onTouch={(cell, lane, stroke) => onTouch(panel.bar.index, cell, lane, stroke)}
          />
        ))}
        {card.panels.length === 1 && <p className="half-words">{halfWords(card)}</p>}
      </div>
      {props.children}
    </div>
  );
}

/** What the card says in its heading, in a few words, or null. */
export function sayingOf(card: Card): string | null {
  const words: Record<CardNote, string | null> = {
    'other side': GRID_WORDS.fromSide(card.side),
    'lone bar': null,
    'half side': null,
    restart: GRID_WORDS.restartShort,
    'half step out': GRID_WORDS.halfStepOut,
  };
  const said = card.notes.map((note) => words[note]);
  if (card.panels.some((panel) => panel.hits.length > 0)) said.push(GRID_WORDS.hit);
  return said.filter((saying) => saying !== null).join(' · ') || null;
}

/** What stands in the empty half of a card of a single bar. */
function halfWords(card: Card): string {
  const pickup = card.panels[0]?.bar.kind === 'pickup';
  if (pickup) return GRID_WORDS.pickup;
  return card.notes.includes('half side') ? GRID_WORDS.halfSide : GRID_WORDS.loneBar(card.section);
}
