import type { NotatedEvent, NoteShape } from './notation';
import type { BarFrame } from './note-values';

const FLAGGED: readonly NoteShape[] = ['eighth', 'sixteenth', 'thirty-second'];

/** Which notes of a bar are joined: neighbours with flags, without a rest between, inside one half of the bar (cut time) or dotted quarter (6/8). */
export function beamGroups(events: readonly Pick<NotatedEvent, 'tick' | 'value' | 'kind'>[], frame: BarFrame): number[][] {
  const groups: number[][] = [];
  let half = -1;
  events.forEach((event, i) => {
    const here = Math.floor((event.tick + frame.shift) / frame.half);
    const joins = event.kind !== 'rest' && FLAGGED.includes(event.value.shape);
    const last = groups.at(-1);
    if (joins && last?.at(-1) === i - 1 && here === half) last.push(i);
    else if (joins) groups.push([i]);
    half = here;
  });
  return groups.filter((group) => group.length > 1);
}

/** Where the stem of notes at these staff steps goes: away from the note furthest from the middle line, down when they balance. */
export function stemDirection(steps: readonly number[], middle: number): 'up' | 'down' {
  if (steps.length === 0) return 'up';
  return Math.max(...steps) - middle >= middle - Math.min(...steps) ? 'down' : 'up';
}
