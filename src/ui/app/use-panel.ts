import { type RefObject, useEffect, useRef } from 'react';

/** How a panel behaves where it does not lie over the page. */
export interface PanelManners {
  /** The focus stays where it is when the panel opens: the hands go on where they were. */
  readonly leavesFocus?: boolean;
  /** Escape closes the panel only while the focus is in it. */
  readonly escapeWithin?: boolean;
}

/** Gives the focus back to where it was, without scrolling there. */
export function focusAgain(element: Element | null): void {
  if (element instanceof HTMLElement || element instanceof SVGElement) element.focus({ preventScroll: true });
}

/** What is open, the last one on top, and whether each would close on this press of Escape. */
const opened: { readonly wants: (event: KeyboardEvent) => boolean }[] = [];

/**
 * For a panel that opens: it takes the focus, gives it back to where it was when it goes (a panel that leaves the focus, to where it was
 * last), and Escape closes it wherever the focus is: of several, the one that was opened last. The element needs `tabIndex={-1}` to take the focus.
 */
export function usePanel(onClose: () => void, manners: PanelManners = {}): RefObject<HTMLElement | null> {
  const panel = useRef<HTMLElement>(null);
  const close = useRef(onClose);
  close.current = onClose;
  const { leavesFocus = false, escapeWithin = false } = manners;
  useEffect(() => {
    let outside = document.activeElement;
    const isInside = (element: unknown): boolean => element instanceof Node && panel.current?.contains(element) === true;
    if (!leavesFocus) panel.current?.focus({ preventScroll: true });
    const self = { wants: ({ target }: KeyboardEvent) => !escapeWithin || isInside(target) };
    opened.push(self);
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || event.defaultPrevented || opened.findLast(({ wants }) => wants(event)) !== self) return;
      // Before anything under it hears of it: one press closes one thing.
      event.preventDefault();
      event.stopPropagation();
      close.current();
    };
    const onFocusIn = (event: FocusEvent): void => {
      if (leavesFocus && !isInside(event.target) && event.target !== document.body) outside = event.target as Element;
    };
    window.addEventListener('keydown', onKeyDown, true);
    document.addEventListener('focusin', onFocusIn);
    return () => {
      opened.splice(opened.indexOf(self), 1);
      window.removeEventListener('keydown', onKeyDown, true);
      document.removeEventListener('focusin', onFocusIn);
      const { activeElement } = document;
      const lost = activeElement === document.body || isInside(activeElement) || panel.current === null;
      if (lost) focusAgain(outside);
    };
  }, [leavesFocus, escapeWithin]);
  return panel;
}
