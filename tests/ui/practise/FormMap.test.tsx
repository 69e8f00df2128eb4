import { act, fireEvent, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { board } from './drawn-board';

/** The map is fetched apart from the board. */
const map = () => screen.findByRole('navigation', { name: 'The form' });

describe('the map of the form', () => {
  it('shows every section with its bars, odd ones set apart in words', async () => {
    await board();
    const sections = within(await map());
    expect(sections.getByText('Bridge').closest('.map-section')?.textContent).toContain('3 bars');
    expect(sections.getByText('Break').closest('.map-section')?.textContent).toContain('1 bar, from the 3-side');
  });

  it('leads to any card', async () => {
    const { props } = await board();
    await map();
    fireEvent.click(screen.getByRole('button', { name: 'bars 9 to 10: D6, Gm6' }));
    expect(props.onStartAt).toHaveBeenCalledWith(8);
  });

  it('moves an end of the loop by a card with the arrow keys, never past the other end', async () => {
    const { props, again } = await board({ loop: { fromBar: 0, toBar: 4 } });
    await map();
    fireEvent.keyDown(screen.getByRole('slider', { name: 'Loop ends after' }), { key: 'ArrowRight' });
    expect(props.onLoop).toHaveBeenLastCalledWith(0, 6);
    fireEvent.keyDown(screen.getByRole('slider', { name: 'Loop starts at' }), { key: 'ArrowRight' });
    expect(props.onLoop).toHaveBeenLastCalledWith(2, 4);
    again({ loop: { fromBar: 2, toBar: 4 } });
    fireEvent.keyDown(screen.getByRole('slider', { name: 'Loop starts at' }), { key: 'ArrowRight' });
    expect(props.onLoop).toHaveBeenCalledTimes(2);
  });
});

describe('a loop handle', () => {
  it('keeps the focus when a key moves it beside another card', async () => {
    const { again } = await board({ loop: { fromBar: 0, toBar: 4 } });
    await map();
    const handle = () => screen.getByRole('slider', { name: 'Loop ends after' });
    act(() => handle().focus());
    fireEvent.keyDown(handle(), { key: 'ArrowRight' });
    again({ loop: { fromBar: 0, toBar: 6 } });
    expect(document.activeElement).toBe(handle());
  });

  it('follows the pointer over several cards, shows the run at once and reports it once, when let go', async () => {
    // Every block of the map 40 px wide, side by side.
    const { props, view } = await board();
    await map();
    const blocks = [...view.container.querySelectorAll<HTMLElement>('.map-block')];
    blocks.forEach((block, at) => {
      block.getBoundingClientRect = () => ({ left: at * 40, right: at * 40 + 40 }) as DOMRect;
    });
    const handle = () => screen.getByRole('slider', { name: 'Loop ends after' });
    fireEvent.pointerDown(handle(), { clientX: 260 });
    for (const clientX of [230, 150, 100, 60]) fireEvent.pointerMove(window, { clientX });
    expect(handle().getAttribute('aria-valuenow')).toBe('4');
    expect(props.onLoop).not.toHaveBeenCalled();
    fireEvent.pointerUp(window);
    fireEvent.pointerUp(window);
    expect(vi.mocked(props.onLoop).mock.calls).toEqual([[0, 4]]);
  });
});
