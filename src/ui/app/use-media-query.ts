import { useSyncExternalStore } from 'react';

/** True while the window answers a media query; drawn again only when the answer changes. False where the page has no window to ask. */
export function useMediaQuery(query: string): boolean {
  return useSyncExternalStore(
    (changed) => {
      const list = window.matchMedia?.(query);
      list?.addEventListener('change', changed);
      return () => list?.removeEventListener('change', changed);
    },
    () => window.matchMedia?.(query).matches ?? false,
  );
}
