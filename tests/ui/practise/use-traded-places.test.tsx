import { renderHook } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { useTradedPlaces } from '../../../src/ui/practise/use-traded-places';
import type { Direction } from '../../../src/vocabulary';

/** A card of panels, one 300 px wide beside the other, that write down how they slide. */
function card(...sides: readonly string[]) {
  const rows = document.createElement('div');
  const slides: string[] = [];
  sides.forEach((side, index) => {
    const panel = document.createElement('section');
    panel.dataset.side = side;
    Object.defineProperty(panel, 'offsetLeft', { value: index * 300 });
    panel.animate = vi.fn(([from]: Keyframe[]) => slides.push(`${side} from ${from?.transform}`)) as never;
    rows.append(panel);
  });
  return { rows, slides };
}
const traded = (rows: HTMLElement) =>
  renderHook(({ direction }: { direction: Direction }) => useTradedPlaces({ current: rows }, direction), {
    initialProps: { direction: '2-3' },
  });

afterEach(() => vi.unstubAllGlobals());

describe('Panels that change places', () => {
  it('slide from where the other one stands, once for each change of direction', () => {
    const { rows, slides } = card('2', '3');
    const { rerender } = traded(rows);
    rerender({ direction: '2-3' });
    expect(slides).toEqual([]);
    rerender({ direction: '3-2' });
    expect(slides).toEqual(['2 from translate(300px, 0px)', '3 from translate(-300px, 0px)']);
    rerender({ direction: '3-2' });
    expect(slides).toHaveLength(2);
  });

  it('stay where they are when less motion was asked for, or when the card holds a single bar', () => {
    const lone = card('3');
    traded(lone.rows).rerender({ direction: '3-2' });
    expect(lone.slides).toEqual([]);
    vi.stubGlobal('matchMedia', () => ({ matches: true }));
    const calm = card('2', '3');
    traded(calm.rows).rerender({ direction: '3-2' });
    expect(calm.slides).toEqual([]);
  });
});
