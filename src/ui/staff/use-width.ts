import { type RefObject, useLayoutEffect, useState } from 'react';

/** Width of an element in CSS pixels, rounded to ten so that a scrollbar does not make everything be drawn again; null before it is known. */
export function useWidth(target: RefObject<Element | null>): number | null {
  const [width, setWidth] = useState<number | null>(null);
  useLayoutEffect(() => {
    const element = target.current;
    if (!element) return;
    const measure = (): void => setWidth(Math.floor(element.clientWidth / 10) * 10);
    measure();
    if (typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [target]);
  return width;
}
