import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Command } from '../command';
import type { DeskState } from '../desk-state';
import { type History, NO_HISTORY, recorded, redone, undone } from './history';

/** What the editor shows beside the text. */
export interface EditingState {
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

/** Takes changes of chart text back, in every chart of this visit apart. */
export interface Editing {
  readonly store: StoreApi<EditingState>;
  /** Takes the last change back; returns where the caret belongs, or null when there is nothing to take back. */
  readonly undo: () => number | null;
  readonly redo: () => number | null;
}

/**
 * Listens to the desk and keeps every change of every chart's text for as long as the page lives, whoever made it. A chart that gets a
 * name of its own (a demo that was typed over, a text parted from another tab's) takes its history along.
 */
export function createEditing(desk: { readonly desk: StoreApi<DeskState>; readonly run: (command: Command) => void }): Editing {
  const histories = new Map<string, History>();
  const store = createStore<EditingState>(() => ({ canUndo: false, canRedo: false }));
  let moving = false;
  const of = (id: string): History => histories.get(id) ?? NO_HISTORY;
  const show = (id: string): void => {
    const { past, future } = of(id);
    store.setState({ canUndo: past.length > 0, canRedo: future.length > 0 });
  };

  desk.desk.subscribe((now, before) => {
    if (now.chartId === before.chartId && now.text === before.text) return;
    const { chartId } = now;
    if (chartId !== before.chartId && !goesOn(now, before)) {
      show(chartId);
      return;
    }
    const past = of(before.chartId);
    // While a step is taken back its history is written by the one who takes it.
    if (!moving) histories.set(chartId, recorded(past, before.text, now.text));
    else histories.set(chartId, past);
    show(chartId);
  });

  const move = (by: typeof undone): number | null => {
    const { chartId, text } = desk.desk.getState();
    const moved = by(of(chartId), text);
    if (!moved) return null;
    moving = true;
    try {
      desk.run({ kind: 'type', text: moved.text });
    } finally {
      moving = false;
    }
    const after = desk.desk.getState().chartId;
    histories.set(after, moved.history);
    show(after);
    return moved.caret;
  };

  return { store, undo: () => move(undone), redo: () => move(redone) };
}

/** True when the same text goes on under a new name: both its name and its place on the shelf came in one change. */
const goesOn = (now: DeskState, before: DeskState): boolean => now.shelf !== before.shelf && now.shelf[0]?.id === now.chartId;
