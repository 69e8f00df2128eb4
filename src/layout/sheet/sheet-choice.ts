import { FINGERINGS, type Fingering } from '../notation/fingering';
import { HABITS, type Habit } from '../notation/notation';

/** Kinds of sheet: one exercise for a lesson, tasks with an answer key, one tune at three levels, a list for a stand full of the band's own parts. */
export const SHEET_KINDS = ['lesson', 'worksheet', 'levels', 'list'] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];
/** Kinds that are engraved. */
export type EngravedKind = Exclude<SheetKind, 'list'>;

/** How much of the tune is printed. */
export const EXTENTS = ['whole', 'first section', 'loop'] as const;
export type Extent = (typeof EXTENTS)[number];

/** Which hands are printed; `apart` gives each hand a line of its own first, then both. */
export const SHEET_HANDS = ['together', 'apart', 'right', 'left'] as const;
export type SheetHands = (typeof SHEET_HANDS)[number];

/** What a pupil does on a worksheet. */
export const TASKS = ['blank', 'missing', 'crossed'] as const;
export type Task = (typeof TASKS)[number];

/** Parts of a sheet that can be left out. */
export const SHEET_PARTS = ['rhythm', 'count', 'bass', 'variation', 'other', 'ladder', 'keys', 'teacher'] as const;
export type SheetPart = (typeof SHEET_PARTS)[number];

/** Everything a player or teacher chooses for a sheet; the same for every tune. */
export interface SheetChoice {
  readonly kind: SheetKind;
  readonly extents: Readonly<Record<EngravedKind, Extent>>;
  readonly hands: SheetHands;
  readonly parts: Readonly<Record<SheetPart, boolean>>;
  readonly habit: Habit;
  readonly fingering: Fingering;
  readonly task: Task;
  /** True prints the answers of a worksheet on a page of their own. */
  readonly answers: boolean;
}

/** The sheet of someone who has chosen nothing. */
export const DEFAULT_CHOICE: SheetChoice = {
  kind: 'lesson',
  extents: { lesson: 'whole', worksheet: 'first section', levels: 'first section' },
  hands: 'together',
  parts: { rhythm: true, count: true, bass: true, variation: true, other: true, ladder: true, keys: true, teacher: true },
  habit: 'eighths',
  fingering: 'changes',
  task: 'missing',
  answers: true,
};

/** A choice out of a saved record: every field stands alone, one that is missing or bad takes its default. */
export function choiceFrom(saved: unknown): SheetChoice {
  const fields = record(saved);
  const extents = record(fields.extents);
  const parts = record(fields.parts);
  const one = <Value extends string>(among: readonly Value[], value: unknown, otherwise: Value): Value =>
    among.find((item) => item === value) ?? otherwise;
  const yes = (value: unknown, otherwise: boolean): boolean => (typeof value === 'boolean' ? value : otherwise);
  const extentOf = (kind: EngravedKind): Extent => one(EXTENTS, extents[kind], DEFAULT_CHOICE.extents[kind]);
  return {
    kind: one(SHEET_KINDS, fields.kind, DEFAULT_CHOICE.kind),
    extents: { lesson: extentOf('lesson'), worksheet: extentOf('worksheet'), levels: extentOf('levels') },
    hands: one(SHEET_HANDS, fields.hands, DEFAULT_CHOICE.hands),
    parts: Object.fromEntries(SHEET_PARTS.map((part) => [part, yes(parts[part], DEFAULT_CHOICE.parts[part])])) as Record<
      SheetPart,
      boolean
    >,
    habit: one(HABITS, fields.habit, DEFAULT_CHOICE.habit),
    fingering: one(FINGERINGS, fields.fingering, DEFAULT_CHOICE.fingering),
    task: one(TASKS, fields.task, DEFAULT_CHOICE.task),
    answers: yes(fields.answers, DEFAULT_CHOICE.answers),
  };
}

const record = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
