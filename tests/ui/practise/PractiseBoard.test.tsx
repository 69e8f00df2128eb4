import { act, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Heard } from '../../../src/state/ports';
import { ferryScore } from '../../layout/ferry-score';
import { board, cell, frames, heardAt, score } from './drawn-board';

afterEach(() => vi.restoreAllMocks());

describe('the grid', () => {
  it('is one tab stop of sixteen named cells', async () => {
    await board();
    const grid = screen.getByRole('grid', { name: 'Sounding card, bars 1 to 2' });
    const cells = within(grid).getAllByRole('gridcell');
    expect(cells).toHaveLength(16);
    expect(cells.filter((each) => each.tabIndex === 0)).toEqual([cell(/^bar 1, 2-side, beat 1,/)]);
    expect(cells.every((each) => (each.getAttribute('aria-label') ?? '').length > 10)).toBe(true);
  });

  it('is walked with the arrows, Home and End, and leads on to the next card', async () => {
    const { props } = await board();
    const grid = screen.getByRole('grid');
    act(() => cell(/^bar 1, 2-side, beat 1,/).focus());
    fireEvent.keyDown(grid, { key: 'ArrowRight' });
    expect(document.activeElement).toBe(cell(/^bar 1, 2-side, beat 1 and/));
    fireEvent.keyDown(grid, { key: 'ArrowDown' });
    expect(document.activeElement).toBe(cell(/^bar 2, 3-side, beat 1 and/));
    fireEvent.keyDown(grid, { key: 'End' });
    expect(document.activeElement).toBe(cell(/^bar 2, 3-side, beat 4 and/));
    expect(props.onStartAt).not.toHaveBeenCalled();
    fireEvent.keyDown(grid, { key: 'ArrowRight' });
    expect(props.onStartAt).toHaveBeenCalledWith(2);
  });

  it('takes the focus along to another card', async () => {
    const { again } = await board();
    act(() => cell(/^bar 1, 2-side, beat 1,/).focus());
    fireEvent.keyDown(screen.getByRole('grid'), { key: 'PageDown' });
    again({ cursorBar: 2 });
    expect(document.activeElement).toBe(cell(/^bar 3, 2-side, beat 1,/));
  });

  it('says why a stroke is played on Enter, part by part, and starts at the bar on Shift and Enter', async () => {
    const { props } = await board();
    const grid = screen.getByRole('grid');
    fireEvent.keyDown(grid, { key: 'Enter' });
    expect(await screen.findByText('D5 because of Em7.')).toBeTruthy();
    expect(props.onStroke).toHaveBeenCalledWith(score.parts.rightHand[0]);
    fireEvent.keyDown(grid, { key: 'Enter' });
    expect(await screen.findByText('D4 because of Em7.')).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Close' }));
    expect(screen.queryByText(/because of/)).toBeNull();
    fireEvent.keyDown(grid, { key: 'ArrowDown' });
    fireEvent.keyDown(grid, { key: 'Enter', shiftKey: true });
    expect(props.onStartAt).toHaveBeenCalledWith(1);
  });

  it('does not let an arrow key make the playing music jump', async () => {
    const { props } = await board({ playing: true, heard: () => heardAt(0) });
    fireEvent.keyDown(screen.getByRole('grid'), { key: 'PageDown' });
    expect(props.onStartAt).not.toHaveBeenCalled();
  });
});

describe('touch', () => {
  it('on the heading of a bar starts there', async () => {
    const { props } = await board();
    fireEvent.click(screen.getByTitle('Start at bar 2, 3-side'));
    expect(props.onStartAt).toHaveBeenCalledWith(1);
  });

  it('on the next card starts there', async () => {
    const { props } = await board();
    fireEvent.click(screen.getByRole('button', { name: '3-side bar 4' }));
    expect(props.onStartAt).toHaveBeenCalledWith(3);
  });

  it('in the lowest lane finds the bass that rings there', async () => {
    const { props } = await board();
    fireEvent.click(cell(/^bar 2, 3-side, beat 1,/));
    expect(props.onStroke).toHaveBeenCalledWith(expect.objectContaining({ names: ['A2'] }));
  });
});

describe('the playhead', () => {
  it('moves, lights strokes and keys without a single React commit within a card', async () => {
    let tick = 0;
    const { view, commits } = await board({ playing: true, heard: () => heardAt(tick) });
    await screen.findByRole('navigation', { name: 'The form' });
    await frames(3);
    const before = commits();
    const seen = new Set<string>();
    for (tick = 0; tick < 3840; tick += 120) {
      await frames(2);
      const lit = [...view.container.querySelectorAll('.right-hand[data-lit]')].map((each) => each.getAttribute('data-from') ?? '');
      for (const from of lit) seen.add(from);
    }
    expect(commits()).toBe(before);
    const struck = score.parts.rightHand.filter((stroke) => stroke.tick < 3840).map((stroke) => String(stroke.tick));
    expect(struck.every((from) => seen.has(from))).toBe(true);
  });

  it('shows the next card when it is heard, and its bars round the loop', async () => {
    let tick = 3600;
    await board({ playing: true, heard: () => heardAt(tick) });
    await frames(3);
    expect(screen.getByRole('grid', { name: 'Sounding card, bars 1 to 2' })).toBeTruthy();
    tick = 3850;
    await frames(3);
    expect(screen.getByRole('grid', { name: 'Sounding card, bars 3 to 4' })).toBeTruthy();
    expect(screen.getByRole('region', { name: 'Next card, bars 5 to 6' })).toBeTruthy();
  });

  it('draws a live change when it is heard, not before', async () => {
    const turned = ferryScore(undefined, '3-2');
    const old = {} as Heard['performance'];
    const fresh = {} as Heard['performance'];
    let now = old;
    const heard = () => ({ tick: 100, pass: 0, countIn: null, performance: now });
    const scoreOf = (performance: Heard['performance']) => (performance === old ? score : turned);
    const { again } = await board({ playing: true, heard, scoreOf });
    await frames(3);
    again({ playing: true, heard, scoreOf, score: turned });
    await frames(3);
    expect(cell(/^bar 1, 2-side, beat 1,/)).toBeTruthy();
    now = fresh;
    await frames(3);
    expect(cell(/^bar 1, 3-side, beat 1,/)).toBeTruthy();
  });

  it('counts in with digits and leaves no light behind when it stops', async () => {
    let heard: Heard = heardAt(0, 3.4);
    const { view, again } = await board({ playing: true, heard: () => heard });
    await frames(2);
    expect(view.container.querySelector('.count-in')?.textContent).toBe('4');
    heard = heardAt(10);
    await frames(2);
    expect(view.container.querySelectorAll('[data-lit]').length).toBeGreaterThan(0);
    again({ playing: false });
    expect(view.container.querySelectorAll('[data-lit], [data-now]')).toHaveLength(0);
    expect(view.container.querySelector('.count-in')?.textContent).toBe('');
  });
});

describe('the hand strip', () => {
  it('shows the stroke at the cursor when nothing plays, and what stays', async () => {
    const { view } = await board();
    fireEvent.keyDown(screen.getByRole('grid'), { key: 'End' });
    expect(view.container.querySelector('[data-words="now"]')?.textContent).toMatch(/^C♯ octave, third of A7/);
    expect(view.container.querySelector('[data-words="next"]')?.textContent).toBe('G and B\u00a0· both stay');
    expect([...view.container.querySelectorAll('.key[data-stays]')].map((key) => key.getAttribute('data-midi'))).toEqual(['79', '83']);
  });
});
