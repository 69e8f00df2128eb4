import { type RefObject, useLayoutEffect, useRef } from 'react';
import type { Direction } from '../../vocabulary';

/** When the direction changes, lets the panels be seen changing places: each slides from where its side stood before. Nothing moves for people who asked for less motion. */
export function useTradedPlaces(rows: RefObject<HTMLElement | null>, direction: Direction): void {
  const last = useRef<{ direction: Direction; places: Map<string, { left: number; top: number }> }>({ direction, places: new Map() });
  useLayoutEffect(() => {
    const panels = [...(rows.current?.children ?? [])].filter((child) => child instanceof HTMLElement);
    const places = new Map(panels.map((panel) => [panel.dataset.side ?? '', { left: panel.offsetLeft, top: panel.offsetTop }]));
    const traded = last.current.direction !== direction && !matchMedia('(prefers-reduced-motion: reduce)').matches;
    if (traded) for (const panel of panels) slide(panel, last.current.places.get(panel.dataset.side ?? ''));
    last.current = { direction, places };
  });
}

function slide(panel: HTMLElement, from: { readonly left: number; readonly top: number } | undefined): void {
  if (!from || typeof panel.animate !== 'function') return;
  const motion = getComputedStyle(panel);
  const time = motion.getPropertyValue('--trade-time').trim();
  // As written or as the build rewrites it: 420ms or .42s.
  const duration = (Number.parseFloat(time) || 0) * (time.endsWith('ms') ? 1 : 1000);
  const easing = motion.getPropertyValue('--trade-easing').trim() || 'linear';
  const shift = `translate(${from.left - panel.offsetLeft}px, ${from.top - panel.offsetTop}px)`;
  panel.animate([{ transform: shift }, { transform: 'none' }], { duration, easing });
}
