import { createContext, useContext, useDeferredValue } from 'react';
import { useStore } from 'zustand';
import type { Command } from '../../state/command';
import type { Desk } from '../../state/desk';
import type { DeskState, PlayingState } from '../../state/desk-state';
import { assert } from '../../vocabulary';

/** The one desk of the page. */
export const DeskContext = createContext<Desk | null>(null);

/** The desk itself, for its commands and for reading what is heard. Throws outside the page's frame. */
export function useDeskItself(): Desk {
  const desk = useContext(DeskContext);
  assert(desk, 'a component that uses the desk must stand inside DeskContext');
  return desk;
}

/** One value out of the desk's state; the component is drawn again only when that value changes. */
export function useDesk<Value>(select: (state: DeskState) => Value): Value {
  return useStore(useDeskItself().desk, select);
}

/** The same for what is large to draw: a press is answered where it was made first, and this follows in parts that hold nothing up. */
export function useDeskSoon<Value>(select: (state: DeskState) => Value): Value {
  return useDeferredValue(useDesk(select));
}

/** One value out of what sounds. */
export function usePlaying<Value>(select: (state: PlayingState) => Value): Value {
  return useStore(useDeskItself().playing, select);
}

/** Runs a command. */
export function useRun(): (command: Command) => void {
  return useDeskItself().run;
}
