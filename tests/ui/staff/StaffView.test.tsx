import { act, fireEvent, render, screen } from '@testing-library/react';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Heard } from '../../../src/state/ports';
import { StaffView } from '../../../src/ui/staff/StaffView';
import type { SystemDrawing } from '../../../src/ui/staff/system-drawing';
import { LOOP_SCORE } from '../../layout/loop-score';

const note = document.createElementNS('http://www.w3.org/2000/svg', 'g');
const engrave = vi.fn((_host: HTMLDivElement, _drawing: SystemDrawing) => [{ tick: 1920, endTick: 2160, element: note }]);
vi.mock('../../../src/ui/staff/use-engraver', () => {
  const engraver = { kind: 'ready', engrave: (host: HTMLDivElement, drawing: SystemDrawing) => engrave(host, drawing) };
  return { useEngraver: () => engraver };
});
const frames: FrameRequestCallback[] = [];
const nextFrame = (): void => {
  for (const callback of frames.splice(0)) callback(0);
};

beforeEach(() => {
  frames.length = 0;
  engrave.mockClear();
  vi.stubGlobal('requestAnimationFrame', (callback: FrameRequestCallback) => frames.push(callback));
  vi.stubGlobal('cancelAnimationFrame', () => {});
  vi.stubGlobal('IntersectionObserver', undefined);
  vi.spyOn(HTMLElement.prototype, 'clientWidth', 'get').mockReturnValue(1100);
  HTMLElement.prototype.scrollIntoView = () => {};
});

const silent = (): Heard | null => null;

describe('StaffView', () => {
  it('engraves the loop as one system of four bars and offers each bar to start at', () => {
    const onStartAt = vi.fn();
    render(<StaffView score={LOOP_SCORE} heard={silent} playing={false} onStartAt={onStartAt} />);
    expect(engrave).toHaveBeenCalledOnce();
    expect(engrave.mock.calls[0]?.[1].geometry.bars).toHaveLength(4);
    fireEvent.click(screen.getByRole('button', { name: 'Start at bar 3, 2-side' }));
    expect(onStartAt).toHaveBeenCalledWith(2);
  });

  it('shows only the bars it is asked for', () => {
    render(<StaffView score={LOOP_SCORE} heard={silent} playing={false} onStartAt={() => {}} bars={{ fromBar: 2, toBar: 4 }} />);
    expect(screen.getAllByRole('button').map((button) => button.getAttribute('aria-label'))).toEqual([
      'Start at bar 3, 2-side',
      'Start at bar 4, 3-side',
    ]);
  });

  it('is one tab stop, and the arrow keys go from bar to bar', () => {
    render(<StaffView score={LOOP_SCORE} heard={silent} playing={false} onStartAt={() => {}} />);
    const [first, second] = screen.getAllByRole('button');
    expect(screen.getAllByRole('button').filter((button) => button.tabIndex === 0)).toEqual([first]);
    act(() => first?.focus());
    fireEvent.keyDown(first as HTMLElement, { key: 'ArrowRight' });
    expect(document.activeElement).toBe(second);
    expect(second?.tabIndex).toBe(0);
  });

  it('lights what is heard and clears it, without engraving again', () => {
    const heard = { tick: 2000, pass: 0, countIn: null } as Heard;
    const now: { current: Heard | null } = { current: heard };
    const view = (playing: boolean) => <StaffView score={LOOP_SCORE} heard={read} playing={playing} onStartAt={() => {}} />;
    const read = (): Heard | null => now.current;
    const { rerender, container } = render(view(true));
    nextFrame();
    expect(note.classList.contains('lit')).toBe(true);
    expect(container.querySelector<HTMLElement>('.staff-playhead')?.style.visibility).toBe('visible');
    now.current = { ...heard, tick: 2300 };
    nextFrame();
    expect(note.classList.contains('lit')).toBe(false);
    now.current = { ...heard, countIn: 2 };
    nextFrame();
    expect(container.querySelector<HTMLElement>('.staff-playhead')?.style.visibility).toBe('hidden');
    rerender(view(false));
    expect(engrave).toHaveBeenCalledOnce();
  });
});
