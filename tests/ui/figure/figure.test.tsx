import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { StrictMode } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { RhythmPad } from '../../../src/ui/figure/RhythmPad';
import { StrokeEditor } from '../../../src/ui/figure/StrokeEditor';

const SON = { kind: 'son', direction: '2-3' } as const;

describe('The pad for rhythms', () => {
  it('draws a rhythm by touch, says what it states and hands it over as text', async () => {
    const user = userEvent.setup();
    const use = vi.fn();
    render(
      <StrictMode>
        <RhythmPad clave={SON} stepMillis={250} playing={() => null} onUse={use} />
      </StrictMode>,
    );
    await user.clear(screen.getByLabelText('As text'));
    await user.type(screen.getByLabelText('As text'), 'x.xx.x.x .x.x.x.x');
    expect(screen.getByText('aligned')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: '2-side, 1, stroke' }));
    await user.click(screen.getByRole('button', { name: 'Play it through the chart' }));
    expect(use).toHaveBeenCalledWith('o.xx.x.x .x.x.x.x', '2-3');
  });

  it('says how many steps it found when there are fifteen', async () => {
    const user = userEvent.setup();
    render(<RhythmPad clave={SON} stepMillis={250} playing={() => null} onUse={() => undefined} />);
    await user.clear(screen.getByLabelText('As text'));
    await user.type(screen.getByLabelText('As text'), 'x.xx.x.x .x.xx.x');
    expect(screen.getByRole('alert').textContent).toContain('found 15 steps');
  });
});

describe('The pad while its text is faulty', () => {
  it('names the letter and its column, and offers nothing to play', async () => {
    const user = userEvent.setup();
    render(<RhythmPad clave={SON} stepMillis={250} playing={() => null} onUse={() => undefined} />);
    const text = screen.getByLabelText('As text');
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
    render(<RhythmPad clave={SON} stepMillis={250} playing={() => null} onUse={() => undefined} />);
    screen.getByRole('button', { name: 'Tap it in' }).focus();
    await user.keyboard(' ');
    await user.keyboard('{Enter}');
    expect(screen.getByRole('button', { name: 'Take these taps (2)' })).toBeTruthy();
  });
});

describe('The editor of strokes', () => {
  it('puts a stroke where there is none, and offers undo only when there is something to undo', async () => {
    const user = userEvent.setup();
    const edit = vi.fn();
    const nothing = () => undefined;
    render(
      <StrokeEditor
        place={{ bar: 2, step: 4, stroke: null }}
        changes={0}
        undone={0}
        onEdit={edit}
        onUndo={nothing}
        onRedo={nothing}
        onReset={nothing}
        onClose={nothing}
      />,
    );
    expect(screen.getByText(/bar 3, on 3/)).toBeTruthy();
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Undo' }).disabled).toBe(true);
    await user.click(screen.getByRole('button', { name: 'Put inner notes here' }));
    expect(edit).toHaveBeenCalledWith({ bar: 2, step: 4, change: 'on', as: 'inner' });
  });
});
