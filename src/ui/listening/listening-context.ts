import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Listening, ListeningState } from '../../state/listening/listening-state';
import { useRoom } from '../app/use-room';

/** Fetches listening the first time it is wanted, and gives the same one ever after. */
export const ListeningContext = createContext<(() => Promise<Listening>) | null>(null);

/** Listening, once it is there; null until then, and where the page has none. */
export const useListening = (): Listening | null => useRoom(useContext(ListeningContext));

/** One value out of what is listened to; the component is drawn again only when that value changes. */
export function useHeard<Value>(listening: Listening, select: (state: ListeningState) => Value): Value {
  return useStore(listening.store, select);
}
