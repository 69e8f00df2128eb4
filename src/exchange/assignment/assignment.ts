import type { DrillRecord, PassRecord } from '../../practice/journal';
import type { Direction, Hands, Level } from '../../vocabulary';
import { plainName } from '../plain-name';

/** What a teacher asks for: these bars of this chart, set like this, until so many passes are clean at the goal. */
export interface Assignment {
  /** Made of what it asks for (`contentId`); those set by the first pages have another, and keep it. */
  readonly id: string;
  readonly title: string;
  /** Chart text. */
  readonly text: string;
  /** Words of the teacher; empty for none. */
  readonly note: string;
  readonly direction: Direction;
  readonly kind: 'son' | 'rumba';
  readonly level: Level | 'by section';
  readonly hands: Hands;
  /** Semitones above the chart's own key, 0 to 11. */
  readonly transpose: number;
  /** Half notes a minute: to begin with, and to be reached. */
  readonly tempo: number;
  readonly goalTempo: number;
  /** Sounding bars [fromBar, toBar), from 0; null for the whole form. */
  readonly loop: { readonly fromBar: number; readonly toBar: number } | null;
  /** Clean passes at the goal that are wanted. */
  readonly passes: number;
  /** A drill beside it, and the seed that makes it the same for a whole class. */
  readonly drill: { readonly name: string; readonly seed: number | null } | null;
  /** A date as in `2026-11-28`, or null. */
  readonly due: string | null;
}

/** A pass as it goes back to the teacher: the assignment says which chart. */
export type ResultPass = Omit<PassRecord, 'kind' | 'chart' | 'title'>;
/** A drill as it goes back to the teacher. */
export type ResultDrill = Omit<DrillRecord, 'kind' | 'chart' | 'title'>;

/** What a student hands back. */
export interface Results {
  /** Id of the assignment, its title, and what it asked for. */
  readonly assignment: string;
  readonly title: string;
  readonly goalTempo: number;
  readonly wanted: number;
  /** The student's name and words, as far as they wish; empty for none. */
  readonly who: string;
  readonly words: string;
  /** Milliseconds since 1970. */
  readonly made: number;
  /** Oldest first. */
  readonly passes: readonly ResultPass[];
  readonly drills: readonly ResultDrill[];
}

/** Version of every file written now. */
export const ASSIGNMENT_VERSION = 1;
/** How the names of the two kinds of files end. */
export const ASSIGNMENT_END = '.tarea.json';
export const RESULTS_END = '.resultado.json';
/** The longest file that is read at all, in bytes and in UTF-16 units. */
export const LONGEST_FILE = 2_000_000;
/** The most passes and drills of one results file: the last ones go. */
export const MOST_PASSES = 2_000;
export const MOST_DRILLS = 500;

/** The text of an assignment's file. `readAssignment(writeAssignment(assignment))` is the same assignment. */
export const writeAssignment = (assignment: Assignment): string =>
  `${JSON.stringify({ contratiempo: 'assignment', version: ASSIGNMENT_VERSION, ...assignment }, null, 1)}\n`;

/** The text of a results file; of too many passes or drills the last. */
export const writeResults = (results: Results): string =>
  `${JSON.stringify({
    contratiempo: 'results',
    version: ASSIGNMENT_VERSION,
    ...results,
    passes: results.passes.slice(-MOST_PASSES),
    drills: results.drills.slice(-MOST_DRILLS),
  })}\n`;

/** A file name, safe on every system: `low-tide_bars-1-4.tarea.json`. */
export function assignmentFileName({ title, loop }: Pick<Assignment, 'title' | 'loop'>): string {
  return `${[plainName(title) || 'montuno', ...(loop ? [`bars-${loop.fromBar + 1}-${loop.toBar}`] : [])].join('_')}${ASSIGNMENT_END}`;
}
/** A file name for results, with who made them in front: `ines_low-tide.resultado.json`. */
export const resultsFileName = ({ title, who }: Pick<Results, 'title' | 'who'>): string =>
  `${[plainName(who), plainName(title) || 'montuno'].filter((part) => part !== '').join('_')}${RESULTS_END}`;
