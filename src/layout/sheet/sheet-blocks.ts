import { type Notation, PLAYED_STAVES } from '../notation/notation';
import { type SystemGeometry, systemGeometry } from '../notation/system-geometry';
import { type SystemRange, systemBreaks } from '../notation/systems';
import { foldSystems, type SheetItem } from './folds';
import { type PaperName, paperUnits, UNIT_MM } from './paper';

/** Bars in a system of the sheet. */
export const SHEET_BARS = 4;

/** What a block of the sheet holds. */
export type BlockContent =
  | { readonly kind: 'head' }
  | { readonly kind: 'system'; readonly part: 'main' | 'other'; readonly range: SystemRange; readonly geometry: SystemGeometry }
  | { readonly kind: 'as before'; readonly item: Extract<SheetItem, { kind: 'as before' }> }
  | { readonly kind: 'legend' }
  | { readonly kind: 'other head' }
  | { readonly kind: 'practice' }
  | { readonly kind: 'teacher' };

/** One block of the sheet: it is never cut, and its height is known before it is drawn. */
export interface SheetBlock {
  /** Unique in its sheet. */
  readonly id: string;
  readonly content: BlockContent;
  readonly heightMm: number;
  /** True when it must stand on the same page as the block after it. */
  readonly keepWithNext: boolean;
}

/** Heights of the blocks that are text, in millimetres; the style sheet of the sheet gives them exactly this room. */
export const BLOCK_MM = { head: 31, 'as before': 8, legend: 9, 'other head': 13, practice: 33, teacher: 24 } as const;
/** Space under each system. */
const SYSTEM_GAP_MM = 1;

/** The lesson sheet as a row of blocks: head, the whole form with repeated systems once, legend, the first cycles in the other direction, tempi and keys, the teacher's lines. */
export function sheetBlocks(notation: Notation, other: Notation, paper: PaperName): SheetBlock[] {
  const main = foldSystems(notation, systemBreaks(notation.bars, SHEET_BARS)).map((item) =>
    item.kind === 'system' ? systemBlock(notation, item.range, 'main', paper) : textBlock({ kind: 'as before', item }, false),
  );
  const otherTo = systemBreaks(other.bars, SHEET_BARS)[0]?.to ?? 0;
  const flipped =
    otherTo === 0 ? [] : [textBlock({ kind: 'other head' }, true), systemBlock(other, { from: 0, to: otherTo }, 'other', paper, true)];
  return [
    textBlock({ kind: 'head' }, true),
    ...main,
    textBlock({ kind: 'legend' }, false),
    ...flipped,
    textBlock({ kind: 'practice' }, true),
    textBlock({ kind: 'teacher' }, false),
  ];
}

function textBlock(content: Exclude<BlockContent, { kind: 'system' }>, keepWithNext: boolean): SheetBlock {
  const id = content.kind === 'as before' ? `as before ${content.item.range.from}` : content.kind;
  return { id, content, heightMm: BLOCK_MM[content.kind], keepWithNext };
}

function systemBlock(notation: Notation, range: SystemRange, part: 'main' | 'other', paper: PaperName, keepWithNext = false): SheetBlock {
  const geometry = systemGeometry({
    notation,
    from: range.from,
    to: range.to,
    width: paperUnits(paper),
    perSystem: SHEET_BARS,
    staves: PLAYED_STAVES,
  });
  return {
    id: `${part} ${range.from}`,
    content: { kind: 'system', part, range, geometry },
    heightMm: geometry.height * UNIT_MM + SYSTEM_GAP_MM,
    keepWithNext,
  };
}
