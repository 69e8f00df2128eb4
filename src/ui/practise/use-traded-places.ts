import { type RefObject, useLayoutEffect, useRef } from 'react';
import type { Direction } from '../../vocabulary';

/** When the direction changes, lets the two panels be seen changing places: each slides from where the other now stands. Nothing moves for people who asked for less motion. */
export function useTradedPlaces(rows: RefObject<HTMLElement | null>, direction: Direction): void {
  const last = useRef({ direction, pair: false });
  useLayoutEffect(() => {
    const [first, second] = [...(rows.current?.querySelectorAll<HTMLElement>(':scope > [data-side]') ?? [])];
    const pair = first !== undefined && second !== undefined && first.dataset.side !== second.dataset.side;
    const traded = pair && last.current.pair && last.current.direction !== direction;
    last.current = { direction, pair };
    if (!traded || matchMedia('(prefers-reduced-motion: reduce)').matches) return;
    const shift = { left: second.offsetLeft - first.offsetLeft, top: second.offsetTop - first.offsetTop };
    slide(first, shift.left, shift.top);
    slide(second, -shift.left, -shift.top);
  });
}

/** Slides a panel to its place from one that lies so many CSS px away. */
function slide(panel: HTMLElement, left: number, top: number): void {
  if (typeof panel.animate !== 'function') return;
  const motion = getComputedStyle(panel);
  const time = motion.getPropertyValue('--trade-time').trim();
  // As written or as the build rewrites it: 420ms or .42s.
  const duration = (Number.parseFloat(time) || 0) * (time.endsWith('ms') ? 1 : 1000);
  const easing = motion.getPropertyValue('--trade-easing').trim() || 'linear';
  panel.animate([{ transform: `translate(${left}px, ${top}px)` }, { transform: 'none' }], { duration, easing });
}
