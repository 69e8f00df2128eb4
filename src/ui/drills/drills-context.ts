import { createContext } from 'react';
import { createStore } from 'zustand/vanilla';
import type { DrillsRoom } from '../../state/drills/drills';

/** Fetches the drills the first time they are wanted, and gives the same ones ever after. */
export const DrillsContext = createContext<(() => Promise<DrillsRoom>) | null>(null);

/** True from the first drill on: the board does without its line until then. */
export const drillsBegun = createStore<boolean>(() => false);
