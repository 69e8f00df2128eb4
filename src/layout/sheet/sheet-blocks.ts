import type { Level } from '../../vocabulary';
import type { Notation, StaffName } from '../notation/notation';
import { type SystemGeometry, systemGeometry } from '../notation/system-geometry';
import { type SystemRange, systemBreaks } from '../notation/systems';
import { foldSystems, type SheetItem } from './folds';
import { type PaperName, pageRoom, paperUnits, UNIT_MM } from './paper';
import type { SheetChoice } from './sheet-choice';
import type { SheetMusic } from './sheet-music';
import type { CrossedTask } from './worksheet';

/** Bars in a system of the sheet; clave cycles in the sixteenth-note habit are twice as long. */
const SHEET_BARS = 4;

/** What a heading announces. */
export type Heading =
  | {
      readonly of:
        | 'rhythm'
        | 'right'
        | 'left'
        | 'together'
        | 'other'
        | 'variation'
        | 'blank'
        | 'missing'
        | 'crossed'
        | 'answers'
        | 'no task';
    }
  | { readonly of: 'level'; readonly level: Level };

/** What a block of the sheet holds. */
export type BlockContent =
  | { readonly kind: 'head' }
  | { readonly kind: 'system'; readonly notation: Notation; readonly range: SystemRange; readonly geometry: SystemGeometry }
  | { readonly kind: 'as before'; readonly notation: Notation; readonly item: Extract<SheetItem, { kind: 'as before' }> }
  | { readonly kind: 'legend'; readonly notation: Notation }
  | { readonly kind: 'heading'; readonly heading: Heading }
  | { readonly kind: 'crossed bars'; readonly task: CrossedTask }
  | { readonly kind: 'practice'; readonly ladder: boolean; readonly keys: boolean }
  | { readonly kind: 'teacher' }
  | { readonly kind: 'caution' };

/** One block of the sheet: it is never cut, and its height is known before it is drawn. */
export interface SheetBlock {
  /** Unique in its sheet. */
  readonly id: string;
  readonly content: BlockContent;
  readonly heightMm: number;
  /** True when it must stand on the same page as the block after it. */
  readonly keepWithNext: boolean;
  /** True when it begins a page of its own. */
  readonly newPage?: boolean;
}

/** Heights of the blocks that are text, in millimetres; the style sheet of the sheet gives them exactly this room. */
const BLOCK_MM = { head: 31, 'as before': 8, legend: 9, heading: 12, 'crossed bars': 9, teacher: 16, caution: 9 } as const;
/** Height of the boxes to tick: each row, and what stands round them. */
const PRACTICE_ROW_MM = 12;
const PRACTICE_REST_MM = 8;
/** Height of a line of the teacher's own words, and the letters that surely fit on it. */
const TEACHER_LINE_MM = 6.2;
const TEACHER_LETTERS = 78;
/** Space under each system. */
const SYSTEM_GAP_MM = 1;

/** The sheet as a row of blocks: head, what its kind asks for, and what the reader takes away. `teacher` is the teacher's own text. */
export function sheetBlocks(music: SheetMusic, choice: SheetChoice, teacher: string, paper: PaperName): SheetBlock[] {
  const sheet = new Blocks(choice, paper);
  sheet.text({ kind: 'head' }, true);
  if (choice.kind === 'worksheet') worksheet(sheet, music, choice);
  else if (choice.kind === 'levels') levels(sheet, music);
  else lesson(sheet, music, choice);
  if (choice.kind !== 'worksheet') takeAway(sheet, choice, teacher);
  return sheet.blocks;
}

function lesson(sheet: Blocks, music: SheetMusic, choice: SheetChoice): void {
  const { main, other, variation } = music;
  if (choice.parts.rhythm) {
    sheet.heading({ of: 'rhythm' });
    sheet.firstSystem(main, ['clave', 'rhythm']);
  }
  if (choice.hands === 'apart') {
    for (const hand of ['right', 'left'] as const) {
      sheet.heading({ of: hand });
      sheet.firstSystem(main, ['clave', hand]);
    }
    sheet.heading({ of: 'together' });
  }
  sheet.systems(main, sheet.staves);
  sheet.text({ kind: 'legend', notation: main }, false);
  if (choice.parts.variation && variation) {
    sheet.heading({ of: 'variation' });
    sheet.firstSystem(variation, sheet.staves);
  }
  if (choice.parts.other && other) {
    sheet.heading({ of: 'other' });
    sheet.firstSystem(other, sheet.staves);
  }
}

function levels(sheet: Blocks, music: SheetMusic): void {
  for (const { level, notation } of music.levels) {
    sheet.together(() => {
      sheet.heading({ of: 'level', level });
      sheet.systems(notation, sheet.staves);
    });
  }
  sheet.text({ kind: 'legend', notation: music.main }, false);
}

function worksheet(sheet: Blocks, music: SheetMusic, choice: SheetChoice): void {
  const { task, crossed, main } = music;
  if (choice.task === 'crossed') {
    if (!crossed) {
      sheet.heading({ of: 'no task' });
      return;
    }
    sheet.heading({ of: 'crossed' });
    sheet.systems(crossed.notation, ['clave', 'rhythm']);
    if (choice.answers) sheet.answers(() => sheet.text({ kind: 'crossed bars', task: crossed }, false));
    return;
  }
  sheet.heading({ of: choice.task });
  const given: readonly StaffName[] = choice.task === 'blank' ? ['rhythm'] : [];
  if (task) sheet.systems(task, ['clave', ...given, ...sheet.staves.filter((staff) => staff !== 'clave')]);
  if (choice.answers) sheet.answers(() => sheet.systems(main, sheet.staves));
}

function takeAway(sheet: Blocks, choice: SheetChoice, teacher: string): void {
  const { ladder, keys } = choice.parts;
  if (ladder || keys) sheet.text({ kind: 'practice', ladder, keys }, true);
  if (choice.parts.teacher) {
    const lines = teacher.split('\n').reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / TEACHER_LETTERS)), 0);
    sheet.text({ kind: 'teacher' }, true, BLOCK_MM.teacher + Math.max(0, lines - 2) * TEACHER_LINE_MM);
  }
  sheet.text({ kind: 'caution' }, false);
}

/** Bars that hold a whole clave cycle are twice as long. */
const perSystem = (notation: Notation): number => (notation.bars.some((bar) => bar.count === 2) ? SHEET_BARS / 2 : SHEET_BARS);

/** A sheet under construction. */
class Blocks {
  readonly blocks: SheetBlock[] = [];
  /** Staves of the music as the reader wants it. */
  readonly staves: readonly StaffName[];

  constructor(
    private readonly choice: SheetChoice,
    private readonly paper: PaperName,
  ) {
    const hands: readonly StaffName[] = choice.hands === 'right' || choice.hands === 'left' ? [choice.hands] : ['right', 'left'];
    this.staves = ['clave', ...hands, ...(choice.parts.bass ? (['bass'] as const) : [])];
  }

  text(content: Exclude<BlockContent, { kind: 'system' }>, keepWithNext: boolean, heightMm?: number): void {
    const height =
      content.kind === 'practice'
        ? PRACTICE_REST_MM + PRACTICE_ROW_MM * (Number(content.ladder) + Number(content.keys))
        : BLOCK_MM[content.kind];
    this.#add(content, heightMm ?? height, keepWithNext);
  }

  heading(heading: Heading): void {
    this.text({ kind: 'heading', heading }, true);
  }

  /** Everything that `print` adds, under its heading, on a page of its own. */
  answers(print: () => void): void {
    const at = this.blocks.length;
    this.heading({ of: 'answers' });
    print();
    const first = this.blocks[at];
    if (first) this.blocks[at] = { ...first, newPage: true };
  }

  /** Everything that `print` adds on one page, where a page has room for it. */
  together(print: () => void): void {
    const from = this.blocks.length;
    print();
    const added = this.blocks.slice(from);
    if (added.reduce((sum, { heightMm }) => sum + heightMm, 0) > pageRoom(this.paper)) return;
    added.slice(0, -1).forEach((block, index) => {
      this.blocks[from + index] = { ...block, keepWithNext: true };
    });
  }

  /** All systems; sections that stand once already are referred to. */
  systems(notation: Notation, staves: readonly StaffName[]): void {
    for (const item of foldSystems(notation, systemBreaks(notation.bars, perSystem(notation)))) {
      if (item.kind === 'system') this.#system(notation, item.range, staves);
      else this.text({ kind: 'as before', notation, item }, false);
    }
  }

  /** The first system alone; signs of repeats that lie beyond it would lead nowhere. */
  firstSystem(notation: Notation, staves: readonly StaffName[]): void {
    const [first] = systemBreaks(notation.bars, perSystem(notation));
    if (!first) return;
    if (first.to === notation.bars.length) {
      this.#system(notation, first, staves);
      return;
    }
    const bars = notation.bars.slice(0, first.to).map((bar) => ({ ...bar, repeat: { start: false, end: null }, ending: null }));
    this.#system({ ...notation, bars, ends: 'final' }, first, staves);
  }

  #system(notation: Notation, range: SystemRange, staves: readonly StaffName[]): void {
    const { from, to } = range;
    const counted = this.choice.parts.count;
    const geometry = systemGeometry({
      notation,
      from,
      to,
      width: paperUnits(this.paper),
      perSystem: perSystem(notation),
      staves,
      counted,
    });
    this.#add({ kind: 'system', notation, range, geometry }, geometry.height * UNIT_MM + SYSTEM_GAP_MM, false);
  }

  #add(content: BlockContent, heightMm: number, keepWithNext: boolean): void {
    this.blocks.push({ id: `${this.blocks.length} ${content.kind}`, content, heightMm, keepWithNext });
  }
}
