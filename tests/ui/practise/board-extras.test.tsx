import { fireEvent, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';
import { readChart } from '../../../src/music/chart/read';
import { arrange } from '../../../src/music/score';
import { ferryScore, ODD_FERRY } from '../../layout/ferry-score';
import { board, cell, frames, heardAt, score } from './drawn-board';

function demoScore() {
  const chart = readChart(DEMO_BOOK[0]?.text ?? '');
  if (!chart.ok) throw new Error('the demo chart must be read');
  return arrange(chart.value);
}

describe('touching a cell', () => {
  it('reports the cell and its stroke, and an empty one as a place for a new stroke', async () => {
    const onSelect = vi.fn();
    const onEmptyCell = vi.fn();
    await board({ onSelect, onEmptyCell });
    const grid = screen.getByRole('grid');
    fireEvent.keyDown(grid, { key: 'Enter' });
    expect(onSelect).toHaveBeenLastCalledWith({ bar: 0, step: 0, stroke: score.parts.rightHand[0] });
    expect(onEmptyCell).not.toHaveBeenCalled();
    fireEvent.keyDown(grid, { key: 'ArrowRight' });
    fireEvent.keyDown(grid, { key: 'Enter' });
    expect(onSelect).toHaveBeenLastCalledWith({ bar: 0, step: 1, stroke: null });
    expect(onEmptyCell).toHaveBeenCalledWith(0, 1, 'right');
  });
});

describe('strokes changed by hand', () => {
  it('are marked over their step and said in the names of their cells', async () => {
    const { view, again } = await board({
      edits: [
        { bar: 1, step: 3 },
        { bar: 1, step: 3 },
      ],
    });
    expect(view.container.querySelectorAll('.by-hand')).toHaveLength(1);
    expect(cell(/^bar 2, 3-side, beat 2 and,/).getAttribute('aria-label')).toContain('changed by hand');
    again({ edits: [] });
    expect(view.container.querySelectorAll('.by-hand')).toHaveLength(0);
  });
});

describe('the percussion', () => {
  const many = demoScore();

  it('is not drawn unless it is asked for, but cells name it', async () => {
    const { view } = await board({ score: many });
    expect(view.container.querySelector('.percussion')).toBeNull();
    expect(cell(/^bar 1, 2-side, beat 1,/).getAttribute('aria-label')).toContain('cáscara accent');
  });

  it('has a row to an instrument and tells the rest in words', async () => {
    const { view } = await board({ score: many, showPercussion: true, silent: ['pulse'] });
    expect((await screen.findAllByText('cáscara')).length).toBe(2);
    expect(view.container.querySelectorAll('.percussion .drum').length).toBeGreaterThan(0);
    const struck = new Set(
      Object.entries(many.parts.percussion).flatMap(([name, strokes]) => (strokes.some((each) => each.tick < 3840) ? [name] : [])),
    );
    const rows = new Set([...view.container.querySelectorAll('.row-name')].map((name) => name.textContent));
    const told = (await screen.findByText(/^and /)).textContent?.slice(4).split(', ') ?? [];
    expect(rows.size + told.length).toBe(struck.size);
  });

  it('names the pulse when it sounds, and not when it is silent', async () => {
    const { again } = await board({ score: many, showPercussion: true });
    expect(await screen.findByText(/pulse/)).toBeTruthy();
    again({ score: many, showPercussion: true, silent: ['pulse'] });
    expect(screen.queryByText(/pulse/)).toBeNull();
  });
});

describe('what lies ahead', () => {
  it('is announced in bars, counted down bar by bar without a React commit', async () => {
    // The coro begins at bar 8 (index 7) from the other side; bars 3 and 4 sound first.
    let tick = 3840;
    const odd = ferryScore(ODD_FERRY);
    const { view, commits } = await board({ score: odd, playing: true, heard: () => heardAt(tick) });
    await screen.findByRole('navigation', { name: 'The form' });
    await frames(4);
    const said = () => view.container.querySelector('.turn')?.textContent;
    expect(said()).toBe('in 5 bars: Coro, from the 3-side');
    const before = commits();
    tick = 5760;
    await frames(3);
    expect(said()).toBe('in 4 bars: Coro, from the 3-side');
    expect(commits()).toBe(before);
  });

  it('says what an open vamp does, on the card and to screen readers', async () => {
    await board({ vamp: 'one more round' });
    expect(screen.getAllByText('one more round')).toHaveLength(1);
    expect(screen.getByText('One more round: the cue came after the bass had moved on.')).toBeTruthy();
  });

  it('marks an open vamp in the map in words', async () => {
    await board({ score: demoScore() });
    const map = await screen.findByRole('navigation', { name: 'The form' });
    expect(within(map).getByText('Coro').closest('.map-section')?.textContent).toContain('4 bars, on cue');
  });
});

describe('the card', () => {
  it('carries a line about the exercise for as long as there is one', async () => {
    const { again } = await board({ banner: 'exercise: crossed on purpose' });
    expect(screen.getByText('exercise: crossed on purpose')).toBeTruthy();
    again({ banner: null });
    expect(screen.queryByText('exercise: crossed on purpose')).toBeNull();
  });

  it('gives the staff the width of both panels, under the headings of both sides', async () => {
    const onStartAt = vi.fn();
    await board({ onStartAt, staff: (from, to) => <p>{`staff of ${from} to ${to}`}</p> });
    const staff = await screen.findByText('staff of 0 to 2');
    expect(staff.closest('.panel')).toBeNull();
    expect(screen.queryByRole('gridcell')).toBeNull();
    fireEvent.click(screen.getByTitle('Start at bar 2, 3-side'));
    expect(onStartAt).toHaveBeenCalledWith(1);
  });

  it('lets the sentence about a stroke float, so that nothing below it moves', async () => {
    const { view } = await board();
    fireEvent.keyDown(screen.getByRole('grid'), { key: 'Enter' });
    expect(view.container.querySelector('.now-card > .why')).toBeTruthy();
  });
});
