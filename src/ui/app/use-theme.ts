import { useEffect, useSyncExternalStore } from 'react';
import { useDesk } from './desk-context';

const DARK = '(prefers-color-scheme: dark)';

/** The theme in sight: the player's choice, or what the device prefers. */
export function useTheme(): 'paper' | 'night' {
  const chosen = useDesk((state) => state.preferences.theme);
  const dark = useSyncExternalStore(onPreference, () => window.matchMedia(DARK).matches);
  if (chosen !== 'device') return chosen;
  return dark ? 'night' : 'paper';
}

/** Sets the player's choice on the page's root, where the tokens look for it. */
export function useThemeOnPage(): void {
  const chosen = useDesk((state) => state.preferences.theme);
  useEffect(() => {
    if (chosen === 'device') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = chosen;
  }, [chosen]);
}

function onPreference(changed: () => void): () => void {
  const query = window.matchMedia(DARK);
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
}
