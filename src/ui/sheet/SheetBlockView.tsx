import { useMemo } from 'react';
import type { BlockContent, SheetBlock } from '../../layout/sheet/sheet-blocks';
import type { Score } from '../../music/score';
import { asBeforeWords, SHEET_WORDS, STAFF_WORDS } from '../../words/sheet';
import { EngravedSystem } from '../staff/EngravedSystem';
import { PracticeBoxes } from './PracticeBoxes';
import { SheetHead } from './SheetHead';
import { SheetHeading } from './SheetHeading';
import { SheetLegend } from './SheetLegend';

/** What every block of one sheet may need. */
export interface SheetMatter {
  readonly score: Score;
  readonly tempo: number;
  readonly goal: number;
  /** The teacher's own words. */
  readonly teacher: string;
  /** False where the sheet holds several levels. */
  readonly oneLevel: boolean;
}

/** One block of the sheet in exactly the room that the layout gave it. `engraved` is false while its page is far from the window. */
export function SheetBlockView({
  block,
  matter,
  engraved,
}: {
  readonly block: SheetBlock;
  readonly matter: SheetMatter;
  readonly engraved: boolean;
}) {
  return (
    <div className="sheet-block" data-block={block.content.kind} style={{ height: `${block.heightMm.toFixed(2)}mm` }}>
      <Content content={block.content} matter={matter} engraved={engraved} />
    </div>
  );
}

function Content({
  content,
  matter,
  engraved,
}: {
  readonly content: BlockContent;
  readonly matter: SheetMatter;
  readonly engraved: boolean;
}) {
  const { score, tempo, goal, teacher } = matter;
  switch (content.kind) {
    case 'head':
      return <SheetHead score={score} tempo={tempo} goal={goal} oneLevel={matter.oneLevel} />;
    case 'system':
      return engraved ? <SheetSystem content={content} /> : null;
    case 'as before': {
      const { range, same, section } = content.item;
      const { bars } = content.notation;
      const index = (bar: number): number => bars[bar]?.index ?? (bars.at(-1)?.index ?? 0) + 1;
      return (
        <div className="sheet-as-before">
          {asBeforeWords(section, [index(range.from), index(range.to)], [index(same.from), index(same.to)])}
        </div>
      );
    }
    case 'legend':
      return <SheetLegend notation={content.notation} />;
    case 'heading':
      return <SheetHeading heading={content.heading} clave={score.clave} />;
    case 'crossed bars':
      return (
        <p className="sheet-answers">
          {content.task.answers.map((bar, line) => (
            <span key={bar}>{SHEET_WORDS.crossedAnswer(line + 1, bar + 1)} </span>
          ))}
        </p>
      );
    case 'practice':
      return <PracticeBoxes musicKey={score.key} tempo={tempo} goal={goal} ladder={content.ladder} keys={content.keys} />;
    case 'teacher':
      return (
        <div className="sheet-teacher">
          <h4>{SHEET_WORDS.teacher}</h4>
          {teacher === '' ? <div className="sheet-lines" /> : <p className="sheet-teacher-text">{teacher}</p>}
        </div>
      );
    case 'caution':
      return <p className="sheet-caution">{SHEET_WORDS.caution}</p>;
  }
}

function SheetSystem({ content }: { readonly content: Extract<BlockContent, { kind: 'system' }> }) {
  const { from, to } = content.range;
  const { notation, geometry } = content;
  const drawing = useMemo(() => ({ notation, from, geometry }), [notation, from, geometry]);
  const bars = notation.bars.slice(from, to);
  const last = bars.at(-1);
  const label = STAFF_WORDS.system(
    bars[0]?.index ?? 0,
    (last?.index ?? 0) + (last?.count ?? 1),
    bars.flatMap((bar) => bar.chords.map((chord) => chord.text)),
  );
  return <EngravedSystem drawing={drawing} label={label} />;
}
