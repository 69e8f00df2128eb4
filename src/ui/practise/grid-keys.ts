import type { Panel, StepGrid } from '../../layout/grid/cards';

/** A cell of the grid. */
export interface Place {
  readonly bar: number;
  readonly step: number;
}

/**
 * Where an arrow, Home or End leads, over the whole form: left and right by a step, up and down by a bar, Home and End within the
 * card's bar, with Ctrl to the ends of the card, PageUp and PageDown by a card. Null for any other key.
 */
export function placeAfterKey(grid: StepGrid, place: Place, key: string, ctrl: boolean): Place | null {
  const { panels } = grid;
  const panel = panels[place.bar];
  const card = grid.cards[grid.cardOfBar[place.bar] ?? 0];
  if (!panel || !card) return null;
  switch (key) {
    case 'ArrowRight':
      return place.step + 1 < panel.steps ? { ...place, step: place.step + 1 } : at(panels, place.bar + 1, 0);
    case 'ArrowLeft':
      return place.step > 0 ? { ...place, step: place.step - 1 } : at(panels, place.bar - 1, Number.POSITIVE_INFINITY);
    case 'ArrowDown':
      return at(panels, place.bar + 1, place.step);
    case 'ArrowUp':
      return at(panels, place.bar - 1, place.step);
    case 'Home':
      return at(panels, ctrl ? card.fromBar : place.bar, 0);
    case 'End':
      return at(panels, ctrl ? card.toBar - 1 : place.bar, Number.POSITIVE_INFINITY);
    case 'PageDown':
      return at(panels, card.toBar, 0);
    case 'PageUp':
      return at(panels, grid.cards[card.index - 1]?.fromBar ?? 0, 0);
    default:
      return null;
  }
}

/** The place nearest to a bar and step that exist; bars run round the form. */
function at(panels: readonly Panel[], bar: number, step: number): Place {
  const index = (bar + panels.length) % panels.length;
  const steps = panels[index]?.steps ?? 1;
  return { bar: index, step: Math.min(step, steps - 1) };
}
