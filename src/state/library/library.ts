import { createStore, type StoreApi } from 'zustand/vanilla';
import { titleOf } from '../chart-text';
import { createEditing, type Editing } from '../editing/editing';
import { transposedText } from '../editing/transposed';
import { chartFileName } from '../file-name';
import { type Asides, createAsides } from './asides';
import type { GivenFile } from './intake';
import type { LibraryParts, LibraryState } from './parts';
import { createSets, type Sets } from './sets';
import { createShelf, type ShelfActs } from './shelf-acts';
import { takeIn } from './take-in';

/** Everything about the player's own charts and set lists that the desk itself does without. */
export interface Library extends ShelfActs, Sets, Asides {
  readonly store: StoreApi<LibraryState>;
  readonly editing: Editing;
  /** Brings back what was taken away last. */
  readonly undoRemoval: () => void;
  /** Reads files that were chosen or dropped; each becomes a chart of its own, is handed to whom it is for (a backup, an assignment, results), or is refused with a reason. */
  readonly takeIn: (files: readonly GivenFile[]) => Promise<void>;
  /** Writes the chart on the desk in another key, as text. Does nothing while it has faults. */
  readonly transpose: (semitones: number) => void;
  /** Hands the text of a chart out as a file. */
  readonly saveText: (chartId: string) => void;
}

/** Makes the library over a desk: reads what is kept, puts charts without an entry back on the shelf, and clears away what was removed long ago. */
export async function createLibrary(parts: LibraryParts): Promise<Library> {
  const store = createStore<LibraryState>(() => ({ sets: [], removal: null, intakes: [], asides: [], edition: 0 }));
  const editing = createEditing(parts.desk);
  const shelf = createShelf(parts, store);
  const sets = createSets(parts, store);
  const asides = createAsides(parts, store);
  // What the device holds comes onto the shelf when it comes; the shelf opens without it when that takes too long.
  await parts.desk.inTime(shelf.meet().then(() => Promise.all([sets.meetSets(), asides.meetAsides()])));
  return {
    store,
    editing,
    ...shelf,
    ...sets,
    ...asides,
    undoRemoval: () => {
      const { removal } = store.getState();
      if (removal?.kind === 'chart') shelf.restore(removal.id);
      if (removal?.kind === 'set list') sets.restoreSet(removal.id);
      store.setState({ removal: null });
    },
    takeIn: async (files) => {
      const intakes = await takeIn(files, parts.readSheet, shelf.add);
      store.setState({ intakes: intakes.filter(({ kind }) => kind === 'taken in' || kind === 'refused') });
      for (const intake of intakes) if (intake.kind === 'backup') await parts.considerBackup(intake.name, intake.text);
      const assignments = intakes.filter((intake) => intake.kind === 'assignment');
      if (assignments.length > 0) await parts.considerAssignments(assignments);
      const [first] = intakes.flatMap((intake) => (intake.kind === 'taken in' ? [intake.chartId] : []));
      if (first !== undefined) parts.desk.run({ kind: 'open', chartId: first });
    },
    transpose: (semitones) => {
      const { music, faults } = parts.desk.desk.getState();
      if (music && faults.length === 0) parts.desk.run({ kind: 'type', text: transposedText(music.chart, semitones) });
    },
    saveText: (chartId) => {
      const text = shelf.textOf(chartId);
      parts.saver.save(chartFileName(titleOf(text)), 'text/plain;charset=utf-8', new TextEncoder().encode(text));
    },
  };
}
