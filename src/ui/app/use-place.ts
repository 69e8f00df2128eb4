import { startTransition, useEffect, useLayoutEffect, useRef, useState } from 'react';

/** The places of the page, by their part of the address after `#/`. */
export const PLACES = ['practise', 'chart', 'sheet', 'drills', 'journal'] as const;
export type Place = (typeof PLACES)[number];

/** The place an address names; Practise for anything unknown. */
export function placeOf(hash: string): Place {
  const name = hash.replace(/^#\/?/, '');
  return PLACES.find((place) => place === name) ?? 'practise';
}

/** Goes to a place, to its top also from within it. */
export const goTo = (place: Place): void => {
  window.location.hash = `#/${place}`;
  window.scrollTo(0, 0);
};

/** The place the address names now. A place that is fetched on demand takes over when it is there; the one before stays in sight until then. */
export function usePlace(): Place {
  const [place, setPlace] = useState(() => placeOf(window.location.hash));
  useEffect(() => {
    const follow = (): void => startTransition(() => setPlace(placeOf(window.location.hash)));
    follow();
    window.addEventListener('hashchange', follow);
    return () => window.removeEventListener('hashchange', follow);
  }, []);
  // Every place is begun at its top, wherever the last one was left.
  const last = useRef(place);
  useLayoutEffect(() => {
    if (place !== last.current) window.scrollTo(0, 0);
    last.current = place;
  }, [place]);
  return place;
}
