import { useContext, useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { DrillsRoom, DrillsState } from '../../state/drills/drills';
import { DrillsContext } from './drills-context';

/** The drills, once they are there; null until then, and where the page has none. */
export function useDrills(): DrillsRoom | null {
  const open = useContext(DrillsContext);
  const [room, setRoom] = useState<DrillsRoom | null>(null);
  useEffect(() => {
    let wanted = true;
    void open?.().then((made) => {
      if (wanted) setRoom(() => made);
    });
    return () => {
      wanted = false;
    };
  }, [open]);
  return room;
}

/** One value out of the drills' state. */
export function useDrill<Value>(room: DrillsRoom, select: (state: DrillsState) => Value): Value {
  return useStore(room.store, select);
}
