import { type RefObject, useLayoutEffect, useState } from 'react';

/** The room the board has. */
export interface BoardSize {
  /** Width of the board in CSS px. */
  readonly width: number;
  /** Height between the top of the board and the transport. */
  readonly height: number;
  /** Height of the row above the cards: title and map; 0 where it follows below them. */
  readonly top: number;
}

/** Before the first measure, and where nothing can be measured. */
export const UNMEASURED: BoardSize = { width: 1240, height: 700, top: 60 };
const TRANSPORT_PX = 100;

/** The room the board has: measured when it changes, never per frame. Null until the board stands for the first time. */
export function useBoardSize(board: RefObject<HTMLElement | null>): BoardSize | null {
  const [size, setSize] = useState<BoardSize | null>(null);
  useLayoutEffect(() => {
    const element = board.current;
    if (!element) return;
    const measure = () => {
      const box = element.getBoundingClientRect();
      if (box.width === 0) return setSize((before) => before ?? UNMEASURED);
      const style = getComputedStyle(element);
      const width = box.width - Number.parseFloat(style.paddingLeft) - Number.parseFloat(style.paddingRight);
      const said = Number.parseFloat(style.getPropertyValue('--transport-height'));
      // Where the bar keeps clear of a device's own edge it is higher than it says; at the side of the page it takes no height.
      const bar = said === 0 ? null : document.querySelector<HTMLElement>('.transport-bar');
      const transport = bar?.offsetHeight || (Number.isNaN(said) ? TRANSPORT_PX : said);
      const line = Number.parseFloat(style.getPropertyValue('--line-room')) || 0;
      const height = Math.round(window.innerHeight - (box.top + window.scrollY) - transport - line);
      const row = element.firstElementChild;
      const below = row !== null && Number(getComputedStyle(row).order) > 0;
      const top = below ? 0 : Math.round(row?.getBoundingClientRect().height ?? 0);
      setSize((before) => {
        const same = before !== null && Math.abs(before.width - width) < 1 && before.height === height && before.top === top;
        return same ? before : { width, height, top };
      });
    };
    measure();
    const observer = typeof ResizeObserver === 'function' ? new ResizeObserver(measure) : null;
    observer?.observe(element);
    window.addEventListener('resize', measure);
    return () => {
      observer?.disconnect();
      window.removeEventListener('resize', measure);
    };
  }, [board]);
  return size;
}
