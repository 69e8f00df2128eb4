import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react';

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

/** A panel that is open: what lies in it, and whether it would close on this press of Escape. */
interface Opened {
  readonly has: (element: unknown) => boolean;
  readonly wants: (event: KeyboardEvent) => boolean;
}
/** What is open, the last one on top. */
const opened: Opened[] = [];

/**
 * For a panel that opens: it takes the focus, gives it back to where it was when it goes (a panel that leaves the focus, to where it was
 * last), and Escape closes it wherever the focus is: of several, the one that was opened last. The element needs `tabIndex={-1}` to take the focus.
 */
export function usePanel(onClose: () => void, manners: PanelManners = {}): RefObject<HTMLElement | null> {
  const panel = useRef<HTMLElement>(null);
  const close = useRef(onClose);
  close.current = onClose;
  const { leavesFocus = false, escapeWithin = false } = manners;
  const outside = useRef<Element | null>(null);
  // With the panel itself, not after its first frame: what can be seen can be closed.
  useLayoutEffect(() => {
    const isInside = (element: unknown): boolean => element instanceof Node && panel.current?.contains(element) === true;
    if (!isInside(document.activeElement)) outside.current = document.activeElement;
    if (!leavesFocus) panel.current?.focus({ preventScroll: true });
    const self: Opened = { has: isInside, wants: ({ target }: KeyboardEvent) => !escapeWithin || isInside(target) };
    opened.push(self);
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || event.defaultPrevented || opened.findLast(({ wants }) => wants(event)) !== self) return;
      // Before anything under it hears of it: one press closes one thing.
      event.preventDefault();
      event.stopPropagation();
      close.current();
    };
    const onFocusIn = (event: FocusEvent): void => {
      if (leavesFocus && !isInside(event.target) && event.target !== document.body) outside.current = event.target as Element;
    };
    window.addEventListener('keydown', onKeyDown, true);
    document.addEventListener('focusin', onFocusIn);
    return () => {
      opened.splice(opened.indexOf(self), 1);
      window.removeEventListener('keydown', onKeyDown, true);
      document.removeEventListener('focusin', onFocusIn);
    };
  }, [leavesFocus, escapeWithin]);
  // The focus goes back once the panel is out of the page, unless the one that took its place has it.
  useEffect(
    () => () => {
      if (!opened.some(({ has }) => has(document.activeElement))) focusAgain(outside.current);
    },
    [],
  );
  return panel;
}
