import { useMemo } from 'react';
import { paginate } from '../../layout/sheet/paginate';
import { type PaperName, pageRoom } from '../../layout/sheet/paper';
import { type SheetBlock, sheetBlocks } from '../../layout/sheet/sheet-blocks';
import type { SheetChoice } from '../../layout/sheet/sheet-choice';
import { type SheetScores, sheetMusic } from '../../layout/sheet/sheet-music';
import { SheetBlockView } from './SheetBlockView';
import { SheetPaper } from './SheetPaper';

/** What the pages are made of. Tempi are half notes a minute. */
export interface EngravedPagesProps {
  readonly scores: SheetScores;
  readonly choice: SheetChoice;
  readonly teacher: string;
  readonly tempo: number;
  readonly goal: number;
  readonly paper: PaperName;
  readonly all: boolean;
}

/** Most space that is added under a system so that a full page reaches its foot, in millimetres. */
const MOST_SPREAD_MM = 5;

/** The pages of a lesson sheet, a worksheet or a tune at three levels. */
export function EngravedPages({ scores, choice, teacher, tempo, goal, paper, all }: EngravedPagesProps) {
  const music = useMemo(() => sheetMusic(scores, choice), [scores, choice]);
  const pages = useMemo(() => paginate(sheetBlocks(music, choice, teacher, paper), pageRoom(paper)), [music, choice, teacher, paper]);
  const score = scores.whole;
  const oneLevel = choice.kind !== 'levels';
  const matter = useMemo(() => ({ score, tempo, goal, teacher, oneLevel }), [score, tempo, goal, teacher, oneLevel]);
  return pages.map((blocks, page) => (
    <SheetPaper key={blocks[0]?.id} paper={paper} title={score.title} page={page} pages={pages.length} all={all}>
      {(shown) =>
        blocks.map((block) => (
          <div
            key={block.id}
            style={{ paddingBottom: `${page < pages.length - 1 && isMusic(block) ? spread(blocks, pageRoom(paper)).toFixed(2) : 0}mm` }}
          >
            <SheetBlockView block={block} matter={matter} engraved={shown} />
          </div>
        ))
      }
    </SheetPaper>
  ));
}

const isMusic = (block: SheetBlock): boolean => block.content.kind === 'system';

/** Space under each system of a page that others follow. */
const spread = (blocks: readonly SheetBlock[], room: number): number =>
  Math.min(
    MOST_SPREAD_MM,
    Math.max(0, room - blocks.reduce((sum, block) => sum + block.heightMm, 0)) / Math.max(1, blocks.filter(isMusic).length),
  );
