import { useSyncExternalStore } from 'react';

/** The places of the page, by their part of the address after `#/`. */
export const PLACES = ['practise', 'chart', 'sheet'] as const;
export type Place = (typeof PLACES)[number];

/** The place an address names; Practise for anything unknown. */
export function placeOf(hash: string): Place {
  const name = hash.replace(/^#\/?/, '');
  return PLACES.find((place) => place === name) ?? 'practise';
}

/** The place the address names now. */
export function usePlace(): Place {
  return useSyncExternalStore(onAddress, () => placeOf(window.location.hash));
}

function onAddress(changed: () => void): () => void {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
}
