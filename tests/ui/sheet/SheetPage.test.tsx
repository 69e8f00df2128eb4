import { fireEvent, render, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { SheetPage, type SheetPageProps } from '../../../src/ui/sheet/SheetPage';
import { LOOP_SCORE } from '../../layout/loop-score';

// happy-dom has no text metrics, so nothing is engraved here: the browser tests look at the notes.
vi.mock('../../../src/ui/staff/use-engraver', () => ({ useEngraver: () => ({ kind: 'ready', engrave: () => [] }) }));

const other = { ...LOOP_SCORE, clave: { kind: 'son', direction: '3-2' } as const };
const props = (): SheetPageProps => ({ score: LOOP_SCORE, other, tempo: 62, goal: 92, onMidi: vi.fn(), paper: 'A4', onPaper: vi.fn() });

describe('SheetPage', () => {
  it('shows title, style, key, level, both tempi in both units, and the direction in large print', () => {
    render(<SheetPage {...props()} />);
    const page = screen.getByRole('article', { name: 'page 1 of 1' });
    expect(within(page).getByRole('heading', { level: 2, name: 'Last Ferry' })).toBeTruthy();
    for (const text of [
      'salsa · D major · Level 2, standard',
      '2-3 son',
      'half note = 62, quarter note = 124',
      'half note = 92, quarter note = 184',
      'page 1 of 1',
    ])
      expect(page.textContent).toContain(text);
  });

  it('has the other direction, tempo ladder, twelve keys, teacher’s line and the caution', () => {
    render(<SheetPage {...props()} />);
    expect(screen.getByRole('heading', { level: 3, name: /The other direction: 3-2 son clave/ })).toBeTruthy();
    const [ladder, keys] = screen.getAllByRole('list');
    expect(
      within(ladder as HTMLElement)
        .getAllByRole('listitem')
        .map((item) => item.textContent),
    ).toEqual(['62', '66', '70', '74', '78', '82', '86', '90', '92']);
    expect(within(keys as HTMLElement).getAllByRole('listitem')).toHaveLength(12);
    expect(screen.getByText("Teacher's note")).toBeTruthy();
    expect(screen.getByText(/stop when it hurts/)).toBeTruthy();
  });

  it('names every system in words', () => {
    render(<SheetPage {...props()} />);
    expect(screen.getAllByRole('img', { name: 'Bars 1–4: Em7, A7, D6, B7♭9' })).toHaveLength(2);
  });

  it('prints, saves MIDI and changes paper by its buttons', () => {
    const given = props();
    const print = vi.fn();
    vi.stubGlobal('print', print);
    render(<SheetPage {...given} />);
    fireEvent.click(screen.getByRole('button', { name: 'Print / save as PDF' }));
    expect(print).toHaveBeenCalledOnce();
    fireEvent.click(screen.getByRole('button', { name: 'MIDI file' }));
    expect(given.onMidi).toHaveBeenCalledOnce();
    fireEvent.click(screen.getByRole('radio', { name: 'Letter' }));
    expect(given.onPaper).toHaveBeenCalledWith('Letter');
    vi.unstubAllGlobals();
  });

  it('shows a title that looks like markup as text', () => {
    render(<SheetPage {...props()} score={{ ...LOOP_SCORE, title: '<img src=x onerror=alert(1)>' }} />);
    expect(screen.getByRole('heading', { level: 2, name: '<img src=x onerror=alert(1)>' })).toBeTruthy();
    expect(document.querySelector('img[src]')).toBeNull();
  });
});
