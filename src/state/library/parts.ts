import type { StoreApi } from 'zustand/vanilla';
import type { Command } from '../command';
import type { DemoChart, DeskState } from '../desk-state';
import type { Archive, FileSaver, Storage } from '../ports';
import type { GivenFile, Intake, SheetReader } from './intake';
import type { SetList } from './set-list';

/** What a room needs of the desk. */
export interface DeskOfRoom {
  readonly desk: StoreApi<DeskState>;
  readonly run: (command: Command) => void;
  /** Keeps one more record on this device. */
  readonly keep: (key: string, text: () => string | Promise<string>) => void;
  /** Hands the device what waits to be written; resolves when it has it, or does not answer in time. */
  readonly flush: () => Promise<void>;
  /** Whether the device answers in time; it is said on the page while it does not. */
  readonly inTime: (answer: Promise<unknown>) => Promise<boolean>;
  /** What this page knows and the device has yet to confirm, by key. */
  readonly unconfirmed: () => Promise<ReadonlyMap<string, string>>;
  readonly demos: readonly DemoChart[];
}

/** What the library asks of the desk and the world. */
export interface LibraryParts {
  readonly desk: DeskOfRoom;
  readonly storage: Storage;
  readonly archive: Archive;
  readonly saver: FileSaver;
  readonly readSheet: SheetReader;
  /** Shows what a backup would bring. */
  readonly considerBackup: (name: string, text: string) => Promise<void>;
  /** Shows assignments and results where their own button shows them. */
  readonly considerAssignments: (files: readonly GivenFile[]) => Promise<void>;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  readonly newId: () => string;
}

/** What can be taken back with one press. */
export type Removal = { readonly kind: 'chart' | 'set list'; readonly id: string; readonly title: string };

/** A saved record that could not be read, exactly as it was found. */
export interface Aside {
  /** Under what key it was kept. */
  readonly key: string;
  /** Its length in characters. */
  readonly length: number;
}

/** What the shelf shows beside the desk's own list of charts. */
export interface LibraryState {
  /** The player's set lists, the next day first, those without a day last. */
  readonly sets: readonly SetList[];
  /** What was taken away last, until something else is. */
  readonly removal: Removal | null;
  /** What became of the files that were given last. */
  readonly intakes: readonly Intake[];
  /** Saved records that could not be read and were put aside. */
  readonly asides: readonly Aside[];
  /** Goes up whenever the text of a chart that is not open changes, so that a search is made again. */
  readonly edition: number;
}
