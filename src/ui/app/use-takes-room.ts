import { type RefObject, useLayoutEffect } from 'react';

/**
 * For a row that stands beside the board: the board measures its room when the window changes, so it is told whenever the row comes, goes or
 * grows. `onHeight` hears the row's height in CSS px.
 */
export function useTakesRoom(row: RefObject<HTMLElement | null>, onHeight?: (height: number) => void): void {
  useLayoutEffect(() => {
    const tell = (): void => {
      onHeight?.(row.current?.offsetHeight ?? 0);
      window.dispatchEvent(new Event('resize'));
    };
    const observer = typeof ResizeObserver === 'function' && row.current ? new ResizeObserver(tell) : null;
    if (row.current) observer?.observe(row.current);
    return () => {
      observer?.disconnect();
      requestAnimationFrame(tell);
    };
  }, [row, onHeight]);
}
