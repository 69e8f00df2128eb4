import type { NotatedBar, NotatedEvent } from './notation';
import { staffStep } from './written-pitch';

/** Extra room before a tick of a bar, in staff units. */
export interface SignGap {
  readonly tick: number;
  readonly extra: number;
}

/** Signs nearer than a sixth cannot stand one under the other. */
const SIXTH = 5;
/** Notes at this distance or less leave room for one column of signs between them. */
const CLOSE_TICKS = 240;
/** Width of a column of signs. */
const COLUMN = 10;
/** Columns that are made room for at most. */
const MOST_COLUMNS = 3;

/** Where a bar needs more room than its steps give: before notes with signs side by side that follow close behind other notes, on any staff. */
export function signGaps(bar: NotatedBar): SignGap[] {
  const needed = new Map<number, number>();
  for (const { events } of [bar.staves.right, bar.staves.left, bar.staves.bass]) {
    events.forEach((event, i) => {
      const before = events[i - 1];
      const columns = signColumns(event);
      if (columns < 2 || before?.kind !== 'notes' || before.ticks > CLOSE_TICKS) return;
      needed.set(event.tick, Math.max(needed.get(event.tick) ?? 0, COLUMN * (columns - 1)));
    });
  }
  return [...needed].map(([tick, extra]) => ({ tick, extra })).toSorted((a, b) => a.tick - b.tick);
}

/** Columns that the signs of a chord stand in: the longest run of signs each nearer than a sixth to the next. */
function signColumns(event: NotatedEvent): number {
  const steps = event.pitches.filter((pitch) => pitch.accidental !== null).map(staffStep);
  let run = 0;
  let longest = 0;
  steps.forEach((step, i) => {
    run = i > 0 && step - (steps[i - 1] ?? step) < SIXTH ? run + 1 : 1;
    longest = Math.max(longest, run);
  });
  return Math.min(longest, MOST_COLUMNS);
}

/** The extra room that has been passed at a tick of the bar; it is taken over the step before its note, so that a moving line does not jump. */
export function gapBefore(gaps: readonly SignGap[], tick: number): number {
  return gaps.reduce((sum, gap) => sum + gap.extra * Math.min(1, Math.max(0, (tick - (gap.tick - CLOSE_TICKS)) / CLOSE_TICKS)), 0);
}
