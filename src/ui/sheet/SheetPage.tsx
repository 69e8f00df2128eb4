import { type CSSProperties, useMemo, useRef } from 'react';
import { notate } from '../../layout/notation/notate';
import { pageRoom, paginate } from '../../layout/sheet/paginate';
import { PAPERS, type PaperName } from '../../layout/sheet/paper';
import { foldRepeats } from '../../layout/sheet/repeats';
import { sheetBlocks } from '../../layout/sheet/sheet-blocks';
import type { Score } from '../../music/score';
import { SHEET_WORDS } from '../../words/sheet';
import { useEngraver } from '../staff/use-engraver';
import { useWidth } from '../staff/use-width';
import { SheetBlockView } from './SheetBlockView';
import { SheetTools } from './SheetTools';
import './sheet.css';
import { useTurns } from './use-turns';

/** What the lesson sheet is given; it keeps nothing of its own. Tempi are half notes a minute. */
export interface SheetPageProps {
  readonly score: Score;
  /** The same chart and settings in the other direction; its first cycles are printed. */
  readonly other: Score;
  readonly tempo: number;
  readonly goal: number;
  readonly onMidi: () => void;
  readonly paper: PaperName;
  readonly onPaper: (paper: PaperName) => void;
}

/** CSS pixels in a millimetre, by definition of the unit. */
const PX_PER_MM = 96 / 25.4;

/** The lesson sheet, shown exactly as it prints: pages of the chosen paper, black on white, smaller only where the screen is narrower than the paper. */
export function SheetPage({ score, other, tempo, goal, onMidi, paper, onPaper }: SheetPageProps) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const engraver = useEngraver();
  const notation = useMemo(() => foldRepeats(notate(score, { fingering: 'changes' }), score.bars), [score]);
  const otherNotation = useMemo(() => notate(other), [other]);
  const pages = useMemo(() => paginate(sheetBlocks(notation, otherNotation, paper), pageRoom(paper)), [notation, otherNotation, paper]);
  const order = useMemo(
    () =>
      new Map(
        pages
          .flat()
          .filter((block) => block.content.kind === 'system')
          .map((block, i) => [block, i]),
      ),
    [pages],
  );
  const { done, all } = useTurns(order.size);
  const matter = useMemo(
    () => ({ score, other, notation, otherNotation, tempo, goal }),
    [score, other, notation, otherNotation, tempo, goal],
  );
  const { width: paperWidth, height } = PAPERS[paper];
  const zoom = width === null ? 1 : Math.min(1, width / (paperWidth * PX_PER_MM));
  const print = (): void => {
    all();
    window.print();
  };
  return (
    <section ref={frame} className="sheet" aria-label={SHEET_WORDS.name}>
      <style>{`@page { size: ${paperWidth}mm ${height}mm; margin: 0; }`}</style>
      <SheetTools paper={paper} ready={engraver.kind === 'ready'} onPaper={onPaper} onPrint={print} onMidi={onMidi} />
      <div className="sheet-pages" style={{ '--sheet-zoom': zoom } as CSSProperties}>
        {pages.map((blocks, page) => (
          <article
            key={blocks[0]?.id}
            className="sheet-page"
            style={{ width: `${paperWidth}mm`, height: `${height}mm` }}
            aria-label={SHEET_WORDS.page(page + 1, pages.length)}
          >
            {blocks.map((block) => (
              <SheetBlockView key={block.id} block={block} matter={matter} engraved={(order.get(block) ?? 0) < done} />
            ))}
            <div className="sheet-foot">
              <span>{score.title}</span>
              <span>{SHEET_WORDS.page(page + 1, pages.length)}</span>
            </div>
          </article>
        ))}
      </div>
    </section>
  );
}
