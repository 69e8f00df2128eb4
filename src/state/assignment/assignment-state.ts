import type { StoreApi } from 'zustand/vanilla';
import type { Assignment, Results } from '../../exchange/assignment/assignment';
import type { AssignmentFault } from '../../exchange/assignment/read-assignment';
import type { LinkFault } from '../../exchange/link/lesson';
import type { GivenFile } from '../library/intake';
import type { MadeLink } from '../link/link-room';
import type { KeptAssignment } from './kept-assignments';

/** An assignment out of a file or a link, shown before anything is taken over. */
export interface OfferedAssignment {
  readonly assignment: Assignment;
  /** Bars as they sound, and the key as printed; null while the chart has faults. */
  readonly bars: number | null;
  readonly key: string | null;
  readonly faults: number;
  /** True when it was accepted before. */
  readonly known: boolean;
}

/** A file that could not be taken, and why. */
export interface RefusedFile {
  /** Its number among the files that were given together: two may bear one name. */
  readonly id: number;
  readonly name: string;
  readonly faults: readonly AssignmentFault[];
}

/** What teacher and student see. */
export interface AssignmentState {
  /** Accepted and not put away, the last first. */
  readonly kept: readonly KeptAssignment[];
  /** True when they were written by a newer page and are left alone: nothing is accepted. */
  readonly newer: boolean;
  readonly offer: OfferedAssignment | null;
  readonly refused: readonly RefusedFile[];
  /** Why the link that the page was opened with cannot be read; null for none. */
  readonly refusedLink: LinkFault | null;
  /** True from when something was given until it was brought into sight. */
  readonly come: boolean;
  /** Results that were opened; never kept. */
  readonly results: readonly Results[];
  /** Put away last, to be brought back. */
  readonly putAway: KeptAssignment | null;
}

/** What a teacher says beyond the chart and its settings on the desk. */
export type Order = Pick<Assignment, 'passes' | 'drill' | 'due' | 'note' | 'goalTempo'> & { readonly bars: 'loop' | 'whole' };

/** Assignments by file or link, their results by file. */
export interface AssignmentRoom {
  readonly store: StoreApi<AssignmentState>;
  /** What would go out now: the chart on the desk under its settings. */
  readonly ordered: (order: Order) => Assignment;
  /** Saves an assignment of the chart on the desk under its settings. */
  readonly make: (order: Order) => void;
  /** The same as a link: its address, from the page's own, and its code. Nothing is kept. */
  readonly makeLink: (order: Order, page: string) => MadeLink | LinkFault;
  /** Reads files of both kinds: an assignment is offered, results join the table. Nothing that is kept is touched. */
  readonly give: (files: readonly GivenFile[]) => void;
  /** Reads the part of an address behind `#`: an assignment is offered. Nothing that is kept is touched. */
  readonly look: (hash: string) => void;
  /** What was given is in sight. */
  readonly seen: () => void;
  readonly leave: () => void;
  /** Puts the offered chart on the shelf with its settings, and keeps the assignment. */
  readonly take: () => Promise<void>;
  /** Opens the chart as it was set, with its bars looped; the tempo stays where the student has it. */
  readonly open: (kept: KeptAssignment) => Promise<void>;
  readonly putAway: (kept: KeptAssignment) => void;
  readonly bringBack: () => void;
  readonly saveResults: (kept: KeptAssignment, said: Pick<Results, 'who' | 'words'>) => void;
  readonly clearResults: () => void;
}
