import type { StoreApi } from 'zustand/vanilla';
import type { JournalRecord } from '../../practice/journal';
import type { PlanRun } from '../../practice/practice-plan';
import type { HandMove, SetPlan } from '../../practice/set-planner';
import type { Level } from '../../vocabulary';
import type { AssignmentRoom } from '../assignment/assignment-state';
import type { Command } from '../command';
import type { DeskState } from '../desk-state';
import type { Library } from '../library/library';
import type { Stages } from '../pipeline';
import type { FileSaver, Heard, JournalEntry, JournalStore, Storage } from '../ports';
import type { Zone } from './due-items';

/** A record with the id of the entry that holds it. */
export interface KeptRecord {
  readonly id: string;
  readonly record: JournalRecord;
}

/** What a set of charts asks of the hand; charts that could not be read are named. */
export interface SetStudy {
  readonly set: string;
  readonly plan: SetPlan;
  readonly unread: readonly string[];
}

/** Something in a session: these bars of this chart. */
export interface SessionItem {
  readonly id: string;
  readonly chart: string;
  readonly title: string;
  readonly fromBar: number;
  readonly toBar: number;
  readonly isNew: boolean;
  /** Null for the level that the chart is at. */
  readonly level: Level | null;
}

/** A session that runs. */
export interface Session {
  readonly run: PlanRun;
  readonly items: readonly SessionItem[];
  /** What it leaves for another day. */
  readonly left: readonly SessionItem[];
}

/** What the Journal place shows. */
export interface JournalState {
  readonly loaded: boolean;
  /** Oldest first. */
  readonly records: readonly KeptRecord[];
  /** Entries that a newer page has written, and entries that cannot be read: both are kept as they are. */
  readonly newer: number;
  readonly unread: number;
  /** Why the device refused to keep or to read the journal, or null. */
  readonly refused: string | null;
  /** What was taken out last, to be brought back. */
  readonly removed: readonly JournalEntry[];
  readonly study: SetStudy | null;
  /** Keys of hand moves that were ticked off. */
  readonly known: ReadonlySet<string>;
  readonly rests: boolean;
  readonly session: Session | null;
}

/** What the journal needs of the desk. */
export interface JournalDesk {
  readonly desk: StoreApi<DeskState>;
  readonly run: (command: Command) => void;
  readonly heard: () => Heard | null;
  readonly keep: (key: string, text: () => string) => void;
  readonly flush: () => Promise<void>;
  /** Whether the device answers in time; it is said on the page while it does not. */
  readonly inTime: (answer: Promise<unknown>) => Promise<boolean>;
  readonly rooms: { readonly library: () => Promise<Pick<Library, 'textOf'>> };
}

/** Everything the journal asks of the world. */
export interface JournalPorts {
  readonly desk: JournalDesk;
  readonly journal: JournalStore;
  readonly storage: Storage;
  readonly saver: FileSaver;
  readonly stages: Pick<Stages, 'readChart' | 'arrange'>;
  readonly now: () => number;
  readonly newId: () => string;
  readonly zone: Zone;
  /** Calls back every `ms` until the returned function is called. */
  readonly every: (ms: number, action: () => void) => () => void;
  /** Fetches what teacher and student hand to each other. */
  readonly openAssignments: (journal: {
    readonly store: StoreApi<JournalState>;
    readonly open: (chart: string, bars: { readonly fromBar: number; readonly toBar: number }) => void;
  }) => Promise<AssignmentRoom>;
}

/** One move of the hand to be drilled. */
export type MoveToDrill = Pick<HandMove, 'first' | 'key'>;
