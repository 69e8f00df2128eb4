import { createStore, type StoreApi } from 'zustand/vanilla';
import { choiceFrom, DEFAULT_CHOICE, type SheetChoice } from '../../layout/sheet/sheet-choice';
import type { SheetScores } from '../../layout/sheet/sheet-music';
import type { ArrangeOptions, Score } from '../../music/score';
import { type Level, oppositeDirection } from '../../vocabulary';
import type { Desk } from '../desk';
import type { DeskState } from '../desk-state';
import { openRecord } from '../open-record';
import { type Music, optionsOf, type Stages } from '../pipeline';
import type { Storage } from '../ports';
import type { Settings } from '../settings';
import { NO_NOTES, notesFrom, notesKey, type SheetNotes } from './sheet-notes';

/** Key of the choice in the storage. */
const CHOICE_KEY = 'sheet';
/** Shape of both records. */
const VERSION = 1;
/** The levels of "one tune at three levels": sparse, standard, with pickups. */
const THREE_LEVELS = [1, 2, 4] as const satisfies readonly Level[];

/** What stands on the Sheet place. */
export interface SheetState {
  readonly choice: SheetChoice;
  /** Notes of the chart that lies on the desk; null until they have been read. */
  readonly notes: SheetNotes | null;
  /** Why something could not be kept on this device; null when all is kept. */
  readonly refused: string | null;
}

/** Options and notes of sheets, and the scores they need. Made when a sheet or a staff is first shown. */
export interface SheetDesk {
  readonly sheet: StoreApi<SheetState>;
  readonly choose: (change: Partial<SheetChoice>) => void;
  readonly note: (change: Partial<SheetNotes>) => void;
  /** The scores for a state of the desk and a choice; null without music. */
  readonly scores: (desk: DeskState, choice: SheetChoice) => SheetScores | null;
}

/** Builds the sheet desk over the desk, the arranging stage and the storage; it is filled from storage by itself. */
export function createSheetDesk(ports: {
  readonly desk: Pick<Desk, 'desk' | 'inTime'>;
  readonly arrange: Stages['arrange'];
  readonly storage: Storage;
}): SheetDesk {
  const { desk, storage } = ports;
  const sheet = createStore<SheetState>(() => ({ choice: DEFAULT_CHOICE, notes: null, refused: null }));
  let chartId: string | null = null;

  const scores = rememberLast((music: Music | null, settings: Settings, choice: SheetChoice) =>
    scoresOf(ports.arrange, music, settings, choice),
  );
  const keep = (key: string, record: object): void => {
    void storage.write(key, JSON.stringify({ version: VERSION, ...record })).then((write) => {
      sheet.setState({ refused: write.kind === 'refused' ? write.reason : null });
    });
  };
  /** A record that cannot be read is put aside before anything is written in its place. */
  const read = async (key: string): Promise<unknown> => {
    const found = await storage.read(key);
    if (found.kind !== 'found') return null;
    try {
      return JSON.parse(found.text);
    } catch {
      await storage.write(`quarantine/${key}`, found.text);
      return null;
    }
  };
  const readNotes = (id: string): ((notes: SheetNotes) => void) => {
    chartId = id;
    sheet.setState({ notes: null });
    return openRecord({
      saved: read(notesKey(id)).then((saved) => (saved === null ? NO_NOTES : notesFrom(saved))),
      empty: NO_NOTES,
      inTime: desk.inTime,
      show: (notes) => chartId === id && sheet.setState({ notes }),
      keep: (notes) => keep(notesKey(id), notes),
    });
  };

  const keepChoice = openRecord({
    saved: read(CHOICE_KEY).then((saved) => (saved === null ? DEFAULT_CHOICE : choiceFrom(saved))),
    empty: DEFAULT_CHOICE,
    inTime: desk.inTime,
    show: (choice) => sheet.setState({ choice }),
    keep: (choice) => keep(CHOICE_KEY, choice),
  });
  let keepNotes = readNotes(desk.desk.getState().chartId);
  desk.desk.subscribe((now, before) => {
    if (now.chartId === before.chartId) return;
    // What lies here goes on as a chart of its own (a demo was changed, another tab saved this one): it enters the shelf in the same step, and its notes go with it.
    const onShelf = (state: DeskState): boolean => state.shelf.some(({ id }) => id === now.chartId);
    const goesOn = onShelf(now) && !onShelf(before);
    const { notes } = sheet.getState();
    if (!goesOn || notes === null) keepNotes = readNotes(now.chartId);
    else {
      const key = notesKey(now.chartId);
      chartId = now.chartId;
      keepNotes = (changed) => keep(key, changed);
      keepNotes(notes);
    }
  });

  return {
    sheet,
    choose: (change) => {
      const choice = { ...sheet.getState().choice, ...change };
      sheet.setState({ choice });
      keepChoice(choice);
    },
    note: (change) => {
      const { notes } = sheet.getState();
      if (notes === null) return;
      const changed = { ...notes, ...change };
      sheet.setState({ notes: changed });
      keepNotes(changed);
    },
    scores: (state, choice) => scores(state.music, state.settings, choice),
  };
}

/** The scores of a sheet: the tune, its other direction, another figure for the same bars, and three levels, as far as the choice needs them. */
function scoresOf(arrange: Stages['arrange'], music: Music | null, settings: Settings, choice: SheetChoice): SheetScores | null {
  if (!music) return null;
  const kind = choice.kind === 'list' ? 'lesson' : choice.kind;
  const loop = choice.extents[kind] === 'loop' ? music.loop : null;
  const options = optionsOf(settings, music.whole.closed, loop);
  const again = (change: ArrangeOptions): Score => arrange(music.chart, { ...options, ...change });
  const lesson = choice.kind === 'lesson';
  return {
    whole: music.whole,
    loop: music.loop ? music.score : null,
    other: lesson && choice.parts.other ? again({ direction: oppositeDirection(settings.direction) }) : null,
    variation: lesson && choice.parts.variation ? variationOf(loop ? music.score : music.whole, again, settings.seed) : null,
    levels: choice.kind === 'levels' ? THREE_LEVELS.map((level) => again({ level })) : [],
  };
}

/** Another figure for the same bars: the first of the next seeds, then of the next levels, that differs in what the right hand plays; null if none does. */
function variationOf(score: Score, again: (change: ArrangeOptions) => Score, seed: number): Score | null {
  const notes = (one: Score): string =>
    JSON.stringify(
      (one.parts.rightHand.length > 0 ? one.parts.rightHand : one.parts.leftHand).map(({ tick, midi }) => [tick, midi]).slice(0, 24),
    );
  const changes: ArrangeOptions[] = [{ seed: seed + 1 }, { seed: seed + 2 }, { level: 3 }, { level: 4 }, { level: 2 }];
  for (const change of changes) {
    const other = again({ ...change, edits: [] });
    if (notes(other) !== notes(score)) return other;
  }
  return null;
}

/** The last result again while its inputs are the same values. */
function rememberLast<Inputs extends readonly unknown[], Output>(stage: (...inputs: Inputs) => Output): (...inputs: Inputs) => Output {
  let last: { readonly inputs: Inputs; readonly output: Output } | null = null;
  return (...inputs) => {
    if (last?.inputs.every((input, i) => Object.is(input, inputs[i]))) return last.output;
    last = { inputs, output: stage(...inputs) };
    return last.output;
  };
}
