import { type RefObject, useEffect } from 'react';

/** While taps come in, lights the cell where a tap would fall now. Runs by reference, without React. */
export function useTapLight(bars: RefObject<HTMLElement | null>, from: number | null, stepMillis: number, steps: number): void {
  useEffect(() => {
    if (from === null) return;
    let lit: Element | null = null;
    let frame = requestAnimationFrame(function light(now) {
      const step = ((Math.round((now - from) / stepMillis) % steps) + steps) % steps;
      const cell = bars.current?.querySelector(`[data-step="${step}"]`) ?? null;
      if (cell !== lit) {
        lit?.removeAttribute('data-now');
        cell?.setAttribute('data-now', '');
        lit = cell;
      }
      frame = requestAnimationFrame(light);
    });
    return () => {
      cancelAnimationFrame(frame);
      lit?.removeAttribute('data-now');
    };
  }, [bars, from, stepMillis, steps]);
}
