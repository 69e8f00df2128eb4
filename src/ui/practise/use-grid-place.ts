import { type RefObject, useCallback, useEffect, useRef, useState } from 'react';
import type { Place } from './grid-keys';

/** What the focus moves over. */
export interface GridPlaceOptions {
  readonly root: RefObject<HTMLElement | null>;
  readonly cursorBar: number;
  readonly playing: boolean;
  /** Whether a bar stands on the card that is shown. */
  readonly isShown: (bar: number) => boolean;
  readonly onStartAt: (bar: number) => void;
}

/**
 * The cell that takes the Tab key. It follows the cursor; moved by key it takes the focus along, to another card if need be, and the
 * cursor with it. While playing it stays on the sounding card, so that no arrow key makes the music jump.
 */
export function useGridPlace({ root, cursorBar, playing, isShown, onStartAt }: GridPlaceOptions): readonly [Place, (to: Place) => void] {
  const [place, setPlace] = useState<Place>({ bar: cursorBar, step: 0 });
  const wantsFocus = useRef(false);
  useEffect(() => setPlace((before) => (before.bar === cursorBar ? before : { bar: cursorBar, step: 0 })), [cursorBar]);
  const shown = useRef(isShown);
  shown.current = isShown;
  const onPlace = useCallback(
    (to: Place) => {
      const elsewhere = !shown.current(to.bar);
      if (elsewhere && playing) return;
      wantsFocus.current = true;
      setPlace(to);
      if (elsewhere) onStartAt(to.bar);
    },
    [playing, onStartAt],
  );
  useEffect(() => {
    if (!wantsFocus.current) return;
    wantsFocus.current = false;
    root.current?.querySelector<HTMLElement>(`.cell[data-bar="${place.bar}"][data-step="${place.step}"]`)?.focus({ preventScroll: true });
  }, [place, root]);
  return [place, onPlace];
}
