import { useCallback, useEffect, useState } from 'react';
import type { Cell, Panel } from '../../layout/grid/cards';
import type { Score } from '../../music/score';
import type { Stroke } from '../../vocabulary';
import type { PractiseBoardProps } from './board-props';
import type { Place } from './grid-keys';
import { strokesOf, type TouchLane } from './touch';

/** The stroke that is explained, and what touches and Enter do to it. */
export interface Selection {
  readonly selected: Stroke | null;
  readonly close: () => void;
  readonly onTouch: (bar: number, cell: Cell, lane: TouchLane, stroke: Stroke | null) => void;
  readonly onEnter: (place: Place) => void;
}

/** Keeps the stroke that is explained; it is gone when other music comes. A second Enter goes on to the next stroke of the cell. */
export function useSelection(score: Score, panels: readonly Panel[], report: Reports): Selection {
  const { onStroke, onSelect, onEmptyCell } = report;
  const [selected, setSelected] = useState<Stroke | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: other music, so the stroke that was explained is gone
  useEffect(() => setSelected(null), [score]);
  const onTouch = useCallback(
    (bar: number, cell: Cell, lane: TouchLane, stroke: Stroke | null) => {
      onSelect?.({ bar, step: cell.step, stroke });
      if (stroke) {
        setSelected(stroke);
        onStroke(stroke);
      } else if (lane === 'right' || lane === 'left') onEmptyCell?.(bar, cell.step, lane);
    },
    [onStroke, onSelect, onEmptyCell],
  );
  const onEnter = (place: Place) => {
    const cell = panels[place.bar]?.cells[place.step];
    if (!cell) return;
    const strokes = strokesOf(cell);
    const next = strokes[(selected ? strokes.indexOf(selected) + 1 : 0) % Math.max(1, strokes.length)];
    onTouch(place.bar, cell, 'right', next ?? null);
  };
  return { selected, close: () => setSelected(null), onTouch, onEnter };
}

type Reports = Pick<PractiseBoardProps, 'onStroke' | 'onSelect' | 'onEmptyCell'>;
