import type { NotatedBar, NotatedEvent } from './notation';
import { staffStep } from './written-pitch';

/** Signs nearer than a sixth cannot stand one under the other. */
const SIXTH = 5;
/** Notes at this distance or less leave no room for two signs between them. */
const CLOSE_TICKS = 240;

/** True for a bar in which a note with two signs side by side follows close behind another note. */
export function isCrowded(bar: NotatedBar): boolean {
  return [bar.staves.right, bar.staves.left, bar.staves.bass].some(({ events }) =>
    events.some((event, i) => {
      const before = events[i - 1];
      return before?.kind === 'notes' && before.ticks <= CLOSE_TICKS && signsSideBySide(event);
    }),
  );
}

function signsSideBySide(event: NotatedEvent): boolean {
  const steps = event.pitches.filter((pitch) => pitch.accidental !== null).map(staffStep);
  return steps.some((step, i) => i > 0 && step - (steps[i - 1] ?? step) < SIXTH);
}
