import { useStore } from 'zustand';
import type { Library } from '../../state/library/library';
import type { LibraryState } from '../../state/library/parts';
import { useDeskItself } from '../app/desk-context';
import { useRoom } from '../app/use-room';

/** The library, or null until it is there. */
export const useLibrary = (): Library | null => useRoom(useDeskItself().rooms.library);

/** One value out of the library's state. */
export function useLibraryState<Value>(library: Library, select: (state: LibraryState) => Value): Value {
  return useStore(library.store, select);
}
