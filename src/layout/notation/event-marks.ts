import type { Articulation, ClefName, NotatedEvent } from './notation';
import { CLEF_LINES, staffStep } from './written-pitch';

/** Length of a stem, and the clearance that ties, dots and bar lines need outside the notes. */
const STEM = 35;
const CLEARANCE = 9;
/** Height that a sign over a note takes, and a finger; the first of them stands clear of the head or stem. */
const ARTICULATION_ROOM = 10;
const FINGER_ROOM = 11.5;
const MARK_GAP = 5;

/** Something over or under a note: a sign or a finger, with the middle of its height below the staff's top line. */
export type EventMark = { readonly y: number } & (
  | { readonly kind: 'articulation'; readonly articulation: Articulation }
  | { readonly kind: 'finger'; readonly finger: number }
);

/** Upper and lower end of heads and stem in units below the top line of the staff; null for rests. */
function noteEnds(event: NotatedEvent, clef: ClefName): { readonly from: number; readonly to: number } | null {
  const { top } = CLEF_LINES[clef];
  const ys = event.pitches.map((pitch) => (top - staffStep(pitch) + 7 * event.octaves) * 5);
  if (ys.length === 0) return null;
  const stem = event.value.shape === 'whole' ? 0 : STEM;
  return { from: Math.min(...ys) - (event.stem === 'up' ? stem : 5), to: Math.max(...ys) + (event.stem === 'down' ? stem : 5) };
}

/**
 * The marks of an event. Signs stand over it, nearest first, never inside the staff; fingers stand over the right hand, the highest note's on top, and
 * under the left, the lowest note's at the bottom.
 */
export function eventMarks(event: NotatedEvent, clef: ClefName, fingersGo: 'over' | 'under'): EventMark[] {
  const ends = noteEnds(event, clef);
  if (!ends) return [];
  const marks: EventMark[] = [];
  let over = Math.min(ends.from, 0) - MARK_GAP;
  for (const articulation of event.articulations) {
    marks.push({ kind: 'articulation', articulation, y: over - ARTICULATION_ROOM / 2 });
    over -= ARTICULATION_ROOM;
  }
  let under = Math.max(ends.to, 40) + MARK_GAP;
  // Outwards from the note: the nearest finger is that of the lowest note above it, of the highest note below it.
  for (const finger of fingersGo === 'over' ? event.fingers : event.fingers.toReversed()) {
    marks.push({ kind: 'finger', finger, y: fingersGo === 'over' ? over - FINGER_ROOM / 2 : under + FINGER_ROOM / 2 });
    if (fingersGo === 'over') over -= FINGER_ROOM;
    else under += FINGER_ROOM;
  }
  return marks;
}

/** Upper and lower end of an event with all its marks and the clearance round it, in units below the top line; null for rests. */
export function eventReach(
  event: NotatedEvent,
  clef: ClefName,
  fingersGo: 'over' | 'under',
): { readonly from: number; readonly to: number } | null {
  const ends = noteEnds(event, clef);
  if (!ends) return null;
  const ys = eventMarks(event, clef, fingersGo).map((mark) => mark.y);
  const half = FINGER_ROOM / 2;
  return {
    from: Math.min(ends.from - (event.stem === 'up' ? 0 : CLEARANCE - 5), ...ys.map((y) => y - half)),
    to: Math.max(ends.to + (event.stem === 'down' ? 0 : CLEARANCE - 5), ...ys.map((y) => y + half)),
  };
}
