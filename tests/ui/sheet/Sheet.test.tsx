import { act, fireEvent, render, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { DEFAULT_CHOICE } from '../../../src/layout/sheet/sheet-choice';
import type { Score } from '../../../src/music/score';
import { Sheet, type SheetProps } from '../../../src/ui/sheet/Sheet';
import { LOOP_SCORE } from '../../layout/loop-score';

// happy-dom has no text metrics, so nothing is engraved here: the browser tests look at the notes.
vi.mock('../../../src/ui/staff/use-engraver', () => ({ useEngraver: () => ({ kind: 'ready', engrave: () => [] }) }));

const other = { ...LOOP_SCORE, clave: { kind: 'son', direction: '3-2' } as const };
const parts = { ...DEFAULT_CHOICE.parts, rhythm: false, variation: false };
const props = (score: Score = LOOP_SCORE): SheetProps => ({
  scores: { whole: score, loop: null, other, variation: null, levels: [] },
  choice: { ...DEFAULT_CHOICE, parts },
  onChoose: vi.fn(),
  notes: { teacher: '', breaks: null },
  onNote: vi.fn(),
  refused: null,
  tempo: 62,
  goal: 92,
  onMidi: vi.fn(),
  paper: 'A4',
  onPaper: vi.fn(),
});

describe('Sheet', () => {
  it('shows title, style, key, level, both tempi in both units, and the direction in large print', () => {
    render(<Sheet {...props()} />);
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
    render(<Sheet {...props()} />);
    expect(screen.getByRole('heading', { level: 3, name: /The other direction: 3-2 son clave/ })).toBeTruthy();
    const [ladder, keys] = screen.getAllByRole('list');
    expect(
      within(ladder as HTMLElement)
        .getAllByRole('listitem')
        .map((item) => item.textContent),
    ).toEqual(['62', '66', '70', '74', '78', '82', '86', '90', '92']);
    expect(within(keys as HTMLElement).getAllByRole('listitem')).toHaveLength(12);
    expect(screen.getByRole('heading', { level: 4, name: "Teacher's note" })).toBeTruthy();
    expect(screen.getByText(/stop when it hurts/)).toBeTruthy();
  });

  it('names every system in words', () => {
    render(<Sheet {...props()} />);
    // Pages far from the window wait; before printing, everything stands on them.
    act(() => void window.dispatchEvent(new Event('beforeprint')));
    expect(screen.getAllByRole('img', { name: 'Bars 1–4: Em7, A7, D6, B7♭9' })).toHaveLength(2);
  });

  it('prints, saves MIDI and changes paper by its buttons', () => {
    const given = props();
    const print = vi.fn();
    vi.stubGlobal('print', print);
    render(<Sheet {...given} />);
    fireEvent.click(screen.getByRole('button', { name: 'Print / save as PDF' }));
    expect(print).toHaveBeenCalledOnce();
    fireEvent.click(screen.getByRole('button', { name: 'MIDI file' }));
    expect(given.onMidi).toHaveBeenCalledOnce();
    fireEvent.click(screen.getByRole('radio', { name: 'Letter' }));
    expect(given.onPaper).toHaveBeenCalledWith('Letter');
    vi.unstubAllGlobals();
  });

  it('shows a title that looks like markup as text', () => {
    render(<Sheet {...props({ ...LOOP_SCORE, title: '<img src=x onerror=alert(1)>' })} />);
    expect(screen.getByRole('heading', { level: 2, name: '<img src=x onerror=alert(1)>' })).toBeTruthy();
    expect(document.querySelector('img[src]')).toBeNull();
  });

  it('marks its pages for printers and writers of files, with the size of the paper', () => {
    render(<Sheet {...props()} />);
    const page = document.querySelector<HTMLElement>('[data-sheet-page="1"]');
    expect([page?.dataset.widthMm, page?.dataset.heightMm, page?.style.width, page?.style.height]).toEqual([
      '210',
      '297',
      '210mm',
      '297mm',
    ]);
  });

  it('lets the reader choose the kind of sheet and what goes on it, and prints the teacher’s words', () => {
    const given = { ...props(), notes: { teacher: 'Only bars 1 to 4.\nSlowly.', breaks: null } };
    render(<Sheet {...given} />);
    fireEvent.click(screen.getByRole('radio', { name: 'Worksheet' }));
    expect(given.onChoose).toHaveBeenCalledWith({ kind: 'worksheet' });
    fireEvent.click(screen.getByRole('checkbox', { name: 'Twelve keys' }));
    expect(given.onChoose).toHaveBeenCalledWith({ parts: { ...parts, keys: false } });
    fireEvent.change(screen.getByRole('textbox', { name: /Teacher’s note/ }), { target: { value: 'Left hand alone' } });
    expect(given.onNote).toHaveBeenCalledWith({ teacher: 'Left hand alone' });
    expect(document.querySelector('.sheet-teacher-text')?.textContent).toBe('Only bars 1 to 4.\nSlowly.');
  });

  it('keeps a bad number of bars in the field and says what is expected', () => {
    const given = { ...props(), choice: { ...DEFAULT_CHOICE, kind: 'list' as const } };
    render(<Sheet {...given} />);
    const field = screen.getByRole('textbox', { name: 'Bars in each line, as in the part' });
    fireEvent.change(field, { target: { value: '2 x' } });
    expect((field as HTMLInputElement).value).toBe('2 x');
    expect(screen.getByRole('alert').textContent).toMatch(/“x” is no number of bars/);
    expect(given.onNote).not.toHaveBeenCalled();
    fireEvent.change(field, { target: { value: '2 2' } });
    expect(given.onNote).toHaveBeenLastCalledWith({ breaks: [2] });
    fireEvent.click(screen.getByRole('button', { name: 'Line ends after bar 1 of the list' }));
    expect(given.onNote).toHaveBeenLastCalledWith({ breaks: [1] });
  });
});
