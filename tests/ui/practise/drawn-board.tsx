import { act, render, screen } from '@testing-library/react';
import { Profiler, StrictMode } from 'react';
import { vi } from 'vitest';
import type { Heard } from '../../../src/state/ports';
import type { PractiseBoardProps } from '../../../src/ui/practise/board-props';
import { PractiseBoard } from '../../../src/ui/practise/PractiseBoard';
import { ferryScore } from '../../layout/ferry-score';

/** The score that the board draws in these tests. */
export const score = ferryScore();
/** What is heard at a tick of the first pass. */
export const heardAt = (tick: number, countIn: number | null = null): Heard => ({
  tick,
  pass: 0,
  countIn,
  performance: {} as Heard['performance'],
});

// What the board fetches once it stands is there already, so that a busy machine fails no test.
await Promise.all(
  ['FormMap', 'HandStrip', 'NextCard', 'PercussionRows', 'PercussionCaption', 'StaffCard', 'WhyNote'].map(
    (name) => import(`../../../src/ui/practise/${name}.tsx`),
  ),
);
await import('../../../src/ui/practise/follow-playhead');

/** Draws a board in strict mode, waits for what it fetches; `again` draws it with other props, `commits` counts React's commits. */
export async function board(changes: Partial<PractiseBoardProps> = {}) {
  const props: PractiseBoardProps = {
    score,
    heard: () => null,
    playing: false,
    cursorBar: 0,
    loop: null,
    why: (stroke) => `${stroke.names[0]} because of ${stroke.chord}.`,
    onStartAt: vi.fn(),
    onStroke: vi.fn(),
    onLoop: vi.fn(),
    ...changes,
  };
  let commits = 0;
  const draw = (given: PractiseBoardProps) => (
    <StrictMode>
      <Profiler
        id="board"
        onRender={() => {
          commits += 1;
        }}
      >
        <PractiseBoard {...given} />
      </Profiler>
    </StrictMode>
  );
  const view = render(draw(props));
  await act(async () => undefined);
  return { props, view, again: (more: Partial<PractiseBoardProps>) => view.rerender(draw({ ...props, ...more })), commits: () => commits };
}

/** A cell by the beginning of its name. */
export const cell = (name: RegExp) => screen.getByRole('gridcell', { name });
/** Lets some animation frames pass. */
export const frames = (count: number) =>
  act(async () => {
    for (let at = 0; at < count; at++) await new Promise<void>((done) => requestAnimationFrame(() => done()));
  });
