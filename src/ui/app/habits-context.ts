import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Habits, HabitsRoom } from '../../state/habits/habits';
import { useRoom } from './use-room';

/** The way to the habits of this device: fetched once the page stands. Null where a part of the page is shown by itself. */
export const HabitsContext = createContext<(() => Promise<HabitsRoom>) | null>(null);

/** The habits' room once it is there; null until then. */
export const useHabitsRoom = (): HabitsRoom | null => useRoom(useContext(HabitsContext));

/** One habit, or `before` until the habits are there; drawn again only when it changes. */
export function useHabit<Value>(room: HabitsRoom | null, select: (habits: Habits) => Value, before: Value): Value {
  return useStore(room?.habits ?? NOTHING, (state) => (state === null ? before : select(state)));
}

/** Stands in for the habits until they are there. */
const NOTHING = {
  getState: (): Habits | null => null,
  getInitialState: (): Habits | null => null,
  subscribe: () => () => undefined,
};
