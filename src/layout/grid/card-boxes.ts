import type { Card, StepGrid } from './cards';
import { contourScale } from './contour';
import type { Frame } from './frame';
import { type PanelBoxes, panelBoxes } from './panel-boxes';

/** The boxes of every panel of a card, on one scale, with the octave line coming from and going to the cards around it (over the seam when the music goes round). */
export function cardBoxes(grid: StepGrid, card: Card, frame: Frame): readonly PanelBoxes[] {
  const form = grid.panels;
  const scale = contourScale(card.panels, grid.outerRange, frame.lanes.right, frame.type.mark);
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
