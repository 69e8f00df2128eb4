import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Habit } from '../../layout/notation/notation';
import type { SheetDesk, SheetState } from '../../state/sheet/sheet-desk';
import { useRoom } from '../app/use-room';

/** The way to the sheet desk: fetched when a sheet or a staff is first shown. Null where a part of the page is shown by itself. */
export const SheetsContext = createContext<(() => Promise<SheetDesk>) | null>(null);

/** The sheet desk once it is there; null until then, and where it cannot be fetched. */
export const useSheetDesk = (): SheetDesk | null => useRoom(useContext(SheetsContext));

/** How values are written: as chosen, eighths until the sheet desk is there. */
export const useWrittenHabit = (desk: SheetDesk | null): Habit =>
  useStore(desk?.sheet ?? NOTHING, (state) => state?.choice.habit ?? 'eighths');

/** Stands in for the sheet desk until it is there. */
const NOTHING = {
  getState: (): SheetState | null => null,
  getInitialState: (): SheetState | null => null,
  subscribe: () => () => undefined,
};
