import { createContext, useContext, useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { Listening } from '../../state/listening/listening';
import type { ListeningState } from '../../state/listening/listening-state';

/** Fetches listening the first time it is wanted, and gives the same one ever after. */
export const ListeningContext = createContext<(() => Promise<Listening>) | null>(null);

/** Listening, once it is there; null until then, and where the page has none. */
export function useListening(): Listening | null {
  const open = useContext(ListeningContext);
  const [listening, setListening] = useState<Listening | null>(null);
  useEffect(() => {
    let wanted = true;
    void open?.().then((made) => {
      if (wanted) setListening(() => made);
    });
    return () => {
      wanted = false;
    };
  }, [open]);
  return listening;
}

/** One value out of what is listened to; the component is drawn again only when that value changes. */
export function useHeard<Value>(listening: Listening, select: (state: ListeningState) => Value): Value {
  return useStore(listening.store, select);
}
