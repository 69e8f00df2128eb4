import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { Library } from '../../state/library/library';
import type { LibraryState } from '../../state/library/parts';
import { useDeskItself } from '../app/desk-context';

/** The library, or null until it is there. */
export function useLibrary(): Library | null {
  const { rooms } = useDeskItself();
  const [library, setLibrary] = useState<Library | null>(null);
  useEffect(() => {
    let here = true;
    void rooms.library().then(
      (opened) => here && setLibrary(opened),
      () => undefined,
    );
    return () => {
      here = false;
    };
  }, [rooms]);
  return library;
}

/** One value out of the library's state. */
export function useLibraryState<Value>(library: Library, select: (state: LibraryState) => Value): Value {
  return useStore(library.store, select);
}
