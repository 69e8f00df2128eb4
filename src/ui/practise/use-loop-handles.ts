import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import type { StepGrid } from '../../layout/grid/cards';
import { FORM_WORDS } from '../../words/form-map';
import { GRID_WORDS } from '../../words/grid';
import type { BarRun } from './board-props';

type End = 'from' | 'to';

/**
 * The two handles of the loop. They snap to whole cards; dragging shows the run at once and reports it when let go, the arrow
 * keys move an end by a card and report it. Without a loop the handles stand at the ends of the form.
 */
export function useLoopHandles(grid: StepGrid, loop: BarRun | null, onLoop: (fromBar: number, toBar: number) => void) {
  const [dragged, setDragged] = useState<(BarRun & { readonly end: End }) | null>(null);
  const wantsFocus = useRef<End | null>(null);
  const bars = grid.cardOfBar.length;
  const settled = { fromBar: Math.max(0, loop?.fromBar ?? 0), toBar: Math.min(bars, loop?.toBar ?? bars) };
  const run = dragged ?? settled;

  const movedTo = (end: End, card: number): BarRun => {
    const target = grid.cards[Math.min(grid.cards.length - 1, Math.max(0, card))];
    if (!target) return run;
    if (end === 'from') return { fromBar: Math.min(target.fromBar, firstBarOfCard(grid, run.toBar - 1)), toBar: run.toBar };
    return { fromBar: run.fromBar, toBar: Math.max(target.toBar, endBarOfCard(grid, run.fromBar)) };
  };
  // A handle is drawn beside its card, so it is another element after each move: the window follows the pointer, and the focus is carried over.
  const latest = useRef({ movedTo, settled, onLoop, dragged });
  latest.current = { movedTo, settled, onLoop, dragged };
  const dragging = dragged !== null;
  useEffect(() => {
    if (!dragging) return;
    const stop = new AbortController();
    const listen = (name: 'pointermove' | 'pointerup' | 'pointercancel', listener: (event: globalThis.PointerEvent) => void) =>
      window.addEventListener(name, listener, { signal: stop.signal });
    listen('pointermove', (event) => {
      const { dragged: before, movedTo: moved } = latest.current;
      const card = cardUnder(event.clientX);
      if (before && card !== null) setDragged({ ...moved(before.end, card), end: before.end });
    });
    listen('pointerup', () => {
      const { dragged: to, settled: from, onLoop: report } = latest.current;
      setDragged(null);
      if (to && (to.fromBar !== from.fromBar || to.toBar !== from.toBar)) report(to.fromBar, to.toBar);
    });
    listen('pointercancel', () => setDragged(null));
    return () => stop.abort();
  }, [dragging]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: when the loop has changed, the handle has been drawn anew
  useEffect(() => {
    if (wantsFocus.current) document.querySelector<HTMLElement>(`.loop-handle.${wantsFocus.current}`)?.focus();
    wantsFocus.current = null;
  }, [loop]);
  const handle = (end: End) => ({
    role: 'slider',
    tabIndex: 0,
    'aria-label': end === 'from' ? FORM_WORDS.loopFrom : FORM_WORDS.loopTo,
    'aria-valuemin': 1,
    'aria-valuemax': bars,
    'aria-valuenow': end === 'from' ? run.fromBar + 1 : run.toBar,
    'aria-valuetext': GRID_WORDS.bars(end === 'from' ? run.fromBar : run.toBar - 1, end === 'from' ? run.fromBar + 1 : run.toBar),
    onKeyDown: (event: KeyboardEvent) => {
      const step =
        event.key === 'ArrowRight' || event.key === 'ArrowUp' ? 1 : event.key === 'ArrowLeft' || event.key === 'ArrowDown' ? -1 : 0;
      if (step === 0) return;
      event.preventDefault();
      event.stopPropagation();
      const here = grid.cardOfBar[end === 'from' ? run.fromBar : run.toBar - 1] ?? 0;
      const next = movedTo(end, here + step);
      if (next.fromBar === run.fromBar && next.toBar === run.toBar) return;
      wantsFocus.current = end;
      onLoop(next.fromBar, next.toBar);
    },
    onPointerDown: (event: PointerEvent) => {
      event.preventDefault();
      setDragged({ ...run, end });
    },
  });
  return { run, handle };
}

const firstBarOfCard = (grid: StepGrid, bar: number): number => grid.cards[grid.cardOfBar[bar] ?? 0]?.fromBar ?? bar;
const endBarOfCard = (grid: StepGrid, bar: number): number => grid.cards[grid.cardOfBar[bar] ?? 0]?.toBar ?? bar + 1;

function cardUnder(x: number): number | null {
  const blocks = [...document.querySelectorAll<HTMLElement>('.map-block')];
  const near = blocks
    .map((block) => ({ block, box: block.getBoundingClientRect() }))
    .sort((one, other) => distance(one.box, x) - distance(other.box, x))[0];
  const card = near?.block.dataset.card;
  return card === undefined ? null : Number(card);
}

const distance = (box: DOMRect, x: number): number => Math.max(box.left - x, x - box.right, 0);
