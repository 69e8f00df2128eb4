import { useContext } from 'react';
import { useStore } from 'zustand';
import type { DrillsRoom, DrillsState } from '../../state/drills/drills';
import { useRoom } from '../app/use-room';
import { DrillsContext } from './drills-context';

/** The drills, once they are there; null until then, and where the page has none. */
export const useDrills = (): DrillsRoom | null => useRoom(useContext(DrillsContext));

/** One value out of the drills' state. */
export function useDrill<Value>(room: DrillsRoom, select: (state: DrillsState) => Value): Value {
  return useStore(room.store, select);
}
