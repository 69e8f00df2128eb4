import { fieldsOf, whole } from '../saved-fields';

/** What is written on the sheets of one chart: the teacher's own line, and where the lines of its pencil list break. */
export interface SheetNotes {
  readonly teacher: string;
  /** Bars of the list after which a line ends, ascending, from 1; null for four bars a line. */
  readonly breaks: readonly number[] | null;
}

/** Under what key the notes of a chart are kept. */
export const notesKey = (chartId: string): string => `sheet/${chartId}`;

/** Nothing written yet. */
export const NO_NOTES: SheetNotes = { teacher: '', breaks: null };

/** The longest note of a teacher, in characters: what fits on a sheet beside the music. */
export const TEACHER_LENGTH = 400;
const MOST_BREAKS = 400;

/** Notes out of a saved record, field by field; what is missing or bad is as if nothing were written. */
export function notesFrom(saved: unknown): SheetNotes {
  const { teacher, breaks } = fieldsOf(saved);
  const places = Array.isArray(breaks) ? breaks.slice(0, MOST_BREAKS).flatMap((place) => whole(place, 1, 100_000) ?? []) : null;
  return {
    teacher: typeof teacher === 'string' ? teacher.slice(0, TEACHER_LENGTH) : '',
    breaks: places && [...new Set(places)].toSorted((a, b) => a - b),
  };
}
