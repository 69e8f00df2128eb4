import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { StrictMode } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { RhythmPad, type RhythmPadProps } from '../../../src/ui/figure/RhythmPad';
import { StrokeEditor, type StrokeEditorProps } from '../../../src/ui/figure/StrokeEditor';
import { ferryScore } from '../../layout/ferry-score';

const nothing = () => undefined;
const PAD: RhythmPadProps = {
  clave: { kind: 'son', direction: '2-3' },
  steps: 16,
  stepMillis: 250,
  own: null,
  playing: () => null,
  onUse: nothing,
  onOff: nothing,
};
const EDITOR: StrokeEditorProps = {
  place: { bar: 2, side: 2, step: 4, sixEight: false, stroke: null },
  scale: { tonic: 'D', mode: 'major' },
  why: '',
  changes: 0,
  undone: 0,
  onEdit: nothing,
  onUndo: nothing,
  onRedo: nothing,
  onReset: nothing,
  onClose: nothing,
};

describe('The pad for rhythms', () => {
  it('draws a rhythm by touch, says what it states and hands it over as text', async () => {
    const user = userEvent.setup();
    const use = vi.fn();
    render(
      <StrictMode>
        <RhythmPad {...PAD} onUse={use} />
      </StrictMode>,
    );
    await user.clear(screen.getByLabelText(/As text/));
    await user.type(screen.getByLabelText(/As text/), 'x.xx.x.x .x.x.x.x');
    expect(screen.getByText('Aligned.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: '2-side, 1, stroke' }));
    await user.click(screen.getByRole('button', { name: 'Play it through the chart' }));
    expect(use).toHaveBeenCalledWith('o.xx.x.x .x.x.x.x', '2-3');
  });

  it('says how many steps it found when there are fifteen', async () => {
    const user = userEvent.setup();
    render(<RhythmPad {...PAD} />);
    await user.clear(screen.getByLabelText(/As text/));
    await user.type(screen.getByLabelText(/As text/), 'x.xx.x.x .x.xx.x');
    expect(screen.getByRole('alert').textContent).toContain('found 15 steps');
  });
});

describe('The pad while its text is faulty', () => {
  it('names the letter and its column, and offers nothing to play', async () => {
    const user = userEvent.setup();
    render(<RhythmPad {...PAD} />);
    const text = screen.getByLabelText(/As text/);
    await user.clear(text);
    await user.type(text, 'x.xx.x.x .x.x.x.x');
    expect(screen.getByRole('button', { name: 'Play it through the chart' })).toBeTruthy();
    await user.clear(text);
    await user.type(text, 'q.xx.x.x .x.x.x.x');
    expect(screen.getByRole('alert').textContent).toContain('“q” at column 1');
    expect(screen.queryByRole('button', { name: 'Play it through the chart' })).toBeNull();
  });

  it('takes Space and Enter as taps', async () => {
    const user = userEvent.setup();
    render(<RhythmPad {...PAD} />);
    screen.getByRole('button', { name: 'Tap it in' }).focus();
    await user.keyboard(' ');
    await user.keyboard('{Enter}');
    expect(screen.getByRole('button', { name: 'Take these taps (2)' })).toBeTruthy();
  });
});

describe('The drawing of the pad', () => {
  it('is one tab stop, walked by arrows and filled by letters', async () => {
    const user = userEvent.setup();
    render(<RhythmPad {...PAD} />);
    const cells = screen.getAllByRole('button', { name: /-side, / });
    expect(cells).toHaveLength(16);
    expect(cells.filter((cell) => cell.tabIndex === 0)).toHaveLength(1);
    cells[0]?.focus();
    await user.keyboard('o.ix{ArrowDown}c');
    expect(screen.getByLabelText<HTMLInputElement>(/As text/).value).toBe('o.ix.... ....c...');
    await user.keyboard('{Backspace}');
    expect(document.activeElement?.textContent).toContain('3-side');
  });

  it('exchanges its bars when the direction flips, and says both sentences', async () => {
    const own = { text: 'x.xx.x.x .x.xx.x.', direction: '2-3' } as const;
    const { rerender, container } = render(<RhythmPad {...PAD} own={own} />);
    const order = () => [...container.querySelectorAll<HTMLElement>('.pad-bar')].map((bar) => bar.dataset.side);
    expect(order()).toEqual(['2', '3']);
    rerender(<RhythmPad {...PAD} own={own} clave={{ kind: 'son', direction: '3-2' }} />);
    expect(order()).toEqual(['3', '2']);
    expect(screen.getByLabelText<HTMLInputElement>(/As text/).value).toBe('.x.xx.x. x.xx.x.x');
    expect(screen.getByText('It plays through the chart now.')).toBeTruthy();
    expect(screen.getByText('Crossed.')).toBeTruthy();
    expect(container.querySelectorAll('.mini-stroke')).toHaveLength(9);
  });

  it('has twelve steps in 6/8, counted in eighths', () => {
    render(<RhythmPad {...PAD} clave={{ kind: 'bembe', direction: '3-2' }} steps={12} />);
    expect(screen.getAllByRole('button', { name: /-side, [1-6], rest/ })).toHaveLength(12);
  });
});

describe('The editor of strokes', () => {
  it('names the side, puts a stroke where there is none, and says why nothing can be undone', async () => {
    const user = userEvent.setup();
    const edit = vi.fn();
    const undo = vi.fn();
    render(<StrokeEditor {...EDITOR} onEdit={edit} onUndo={undo} />);
    expect(screen.getByText('bar 3, 2-side, on 3')).toBeTruthy();
    const button = screen.getByRole('button', { name: 'Undo' });
    expect(button.getAttribute('aria-disabled')).toBe('true');
    expect(button.title).toBe('No change was made yet.');
    await user.click(button);
    expect(undo).not.toHaveBeenCalled();
    await user.click(screen.getByRole('button', { name: 'Put inner notes here' }));
    expect(edit).toHaveBeenCalledWith({ bar: 2, step: 4, change: 'on', as: 'inner' });
  });

  it('offers the notes of the scale above and below, and says why the stroke is there', async () => {
    const user = userEvent.setup();
    const edit = vi.fn();
    const [stroke = null] = ferryScore().parts.rightHand.filter(({ names }) => names[0]?.startsWith('C#'));
    render(<StrokeEditor {...EDITOR} place={{ ...EDITOR.place, stroke }} why="It leads to D." onEdit={edit} />);
    expect(screen.getByText('It leads to D.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Down to B' }));
    expect(edit).toHaveBeenCalledWith({ bar: 2, step: 4, change: 'pitch', semitones: -2 });
  });
});
