import { createContext } from 'react';
import { createStore } from 'zustand/vanilla';
import type { DrillsRoom } from '../../state/drills/drills';

/** Fetches the drills the first time they are wanted, and gives the same ones ever after. */
export const DrillsContext = createContext<(() => Promise<DrillsRoom>) | null>(null);

/** Drills that have a page of their own in the Drills place; the others run on the board. */
const OWN_DRILLS = ['which side', 'at sight', 'lost and found'] as const;
/** The name of such a drill. */
export type OwnDrill = (typeof OWN_DRILLS)[number];
/** Whether a drill has a page of its own. */
export const isOwnDrill = (name: string): name is OwnDrill => (OWN_DRILLS as readonly string[]).includes(name);

/** A drill asked for from another place, and the number that sets it; the Drills place opens it and forgets it. */
export const drillWanted = createStore<{ readonly name: OwnDrill; readonly seed: number | null } | null>(() => null);

/** True from the first drill on: the board does without its line until then. */
export const drillsBegun = createStore<boolean>(() => false);
