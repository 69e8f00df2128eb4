import { type CSSProperties, useRef } from 'react';
import { PAPERS, type PaperName } from '../../layout/sheet/paper';
import type { SheetChoice } from '../../layout/sheet/sheet-choice';
import type { SheetScores } from '../../layout/sheet/sheet-music';
import type { SheetNotes } from '../../state/sheet/sheet-notes';
import { SHEET_WORDS } from '../../words/sheet';
import { useEngraver } from '../staff/use-engraver';
import { useWidth } from '../staff/use-width';
import { EngravedPages } from './EngravedPages';
import { PencilPage } from './PencilPage';
import { SheetOptions } from './SheetOptions';
import { SheetTools } from './SheetTools';
import './sheet.css';
import { usePageSize } from './use-page-size';
import { usePrint } from './use-print';

/** What the sheet is given; it keeps nothing of its own. Tempi are half notes a minute. */
export interface SheetProps {
  readonly scores: SheetScores;
  readonly choice: SheetChoice;
  readonly onChoose: (change: Partial<SheetChoice>) => void;
  readonly notes: SheetNotes;
  readonly onNote: (change: Partial<SheetNotes>) => void;
  /** Why choices and notes could not be kept, or null. */
  readonly refused: string | null;
  readonly tempo: number;
  readonly goal: number;
  readonly onMidi: () => void;
  readonly paper: PaperName;
  readonly onPaper: (paper: PaperName) => void;
}

/** CSS pixels in a millimetre, by definition of the unit. */
const PX_PER_MM = 96 / 25.4;

/** The sheet, shown exactly as it prints: pages of the chosen paper, black on white, smaller only where the screen is narrower than the paper. */
export function Sheet(props: SheetProps) {
  const { scores, choice, notes, onNote, tempo, goal, paper } = props;
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const engraver = useEngraver();
  const { all, print } = usePrint();
  usePageSize(paper);
  const paperWidth = PAPERS[paper].width;
  const zoom = width === null ? 1 : Math.min(1, width / (paperWidth * PX_PER_MM));
  return (
    <section className="sheet" aria-label={SHEET_WORDS.name}>
      <div className="sheet-side">
        <SheetTools
          paper={paper}
          ready={choice.kind === 'list' || engraver.kind === 'ready'}
          onPaper={props.onPaper}
          onPrint={print}
          onMidi={props.onMidi}
        />
        <SheetOptions
          choice={choice}
          onChoose={props.onChoose}
          notes={notes}
          onNote={onNote}
          score={scores.whole}
          looped={scores.loop !== null}
          refused={props.refused}
        />
      </div>
      <div ref={frame} className="sheet-column">
        <div className="sheet-pages" style={{ '--sheet-zoom': zoom } as CSSProperties}>
          {choice.kind === 'list' ? (
            <PencilPage score={scores.whole} goal={goal} breaks={notes.breaks} onBreaks={(breaks) => onNote({ breaks })} paper={paper} />
          ) : (
            <EngravedPages scores={scores} choice={choice} teacher={notes.teacher} tempo={tempo} goal={goal} paper={paper} all={all} />
          )}
        </div>
      </div>
    </section>
  );
}
