import type { Backup } from '../../exchange/backup/backup';
import type { MergePlan } from '../../exchange/backup/merge';
import type { BackupFault } from '../../exchange/backup/read-backup';
import type { DeskOfRoom } from '../library/parts';
import type { Archive, FileSaver, JournalStore, Storage } from '../ports';

/** What the device says about how long it keeps things; null where it does not say. */
export interface Persistence {
  /** True when nothing is cleared away without the player's doing. */
  readonly lasting: boolean | null;
  /** Bytes in use, and the most there may be. */
  readonly usage: number | null;
  readonly quota: number | null;
}

/** Asks the device how long it keeps things. */
export interface PersistencePort {
  readonly state: () => Promise<Persistence>;
  /** Asks that nothing be cleared away, and gives the answer. */
  readonly ask: () => Promise<Persistence>;
}

/** Facts about page and device for a report, without anything the player wrote. */
export type DeviceFacts = () => Promise<Readonly<Record<string, string>>>;

/** What safe keeping asks of the desk and the world. */
export interface SafetyParts {
  readonly desk: DeskOfRoom;
  readonly archive: Archive;
  readonly journal: JournalStore;
  /** Where other tabs are told that everything is gone. */
  readonly storage: Pick<Storage, 'tellCleared'>;
  readonly saver: FileSaver;
  readonly persistence: PersistencePort;
  readonly deviceFacts: DeviceFacts;
  /** Puts text on the clipboard; false when the device refuses. */
  readonly copy: (text: string) => Promise<boolean>;
  /** Loads the page anew. */
  readonly reload: () => void;
  /** Called after records were written behind the back of those who hold them. */
  readonly refresh: () => Promise<void>;
  readonly now: () => number;
  readonly newId: () => string;
}

/** A backup that was read and waits for the player's word. */
export interface WaitingRestore {
  readonly name: string;
  readonly file: Backup;
  readonly plan: MergePlan;
  readonly leftOut: readonly BackupFault[];
}

/** What safe keeping shows. */
export interface SafetyState {
  readonly persistence: Persistence | null;
  /** When the last backup was saved from this device, in milliseconds since 1970, or null. */
  readonly lastBackup: number | null;
  readonly waiting: WaitingRestore | null;
  /** Why the file that was given last is no backup. */
  readonly faults: readonly BackupFault[];
  /** True when the last merge can be taken back. */
  readonly merged: boolean;
  /** What stood in the way of the last act, in the device's words, or null. */
  readonly refused: string | null;
  /** The report as it was copied, or to be copied by hand when the clipboard is refused. */
  readonly report: { readonly text: string; readonly copied: boolean } | null;
}
