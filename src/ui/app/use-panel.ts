import { type RefObject, useEffect, useRef } from 'react';

/** For a panel that opens over the page: it takes the focus, gives it back when it goes, and Escape closes it wherever the focus is. */
export function usePanel(onClose: () => void): RefObject<HTMLElement | null> {
  const panel = useRef<HTMLElement>(null);
  const close = useRef(onClose);
  close.current = onClose;
  useEffect(() => {
    const before = document.activeElement;
    panel.current?.focus({ preventScroll: true });
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key === 'Escape' && !event.defaultPrevented) close.current();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => {
      window.removeEventListener('keydown', onKeyDown);
      if (
        before instanceof HTMLElement &&
        (document.activeElement === document.body || panel.current?.contains(document.activeElement) !== false)
      ) {
        before.focus({ preventScroll: true });
      }
    };
  }, []);
  return panel;
}
