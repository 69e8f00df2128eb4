import { useMemo } from 'react';
import type { Notation } from '../../layout/notation/notation';
import type { BlockContent, SheetBlock } from '../../layout/sheet/sheet-blocks';
import type { Score } from '../../music/score';
import { asBeforeWords, SHEET_WORDS, STAFF_WORDS } from '../../words/sheet';
import { EngravedSystem } from '../staff/EngravedSystem';
import { PracticeBoxes } from './PracticeBoxes';
import { SheetHead } from './SheetHead';

/** What every block of one sheet may need. */
export interface SheetMatter {
  readonly score: Score;
  readonly other: Score;
  readonly notation: Notation;
  readonly otherNotation: Notation;
  readonly tempo: number;
  readonly goal: number;
}

/** One block of the sheet in exactly the room that the layout gave it. `engraved` is false while systems further on wait for their turn. */
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
    <div className="sheet-block" style={{ height: `${block.heightMm.toFixed(2)}mm` }}>
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
  const { score, notation, otherNotation, tempo, goal } = matter;
  switch (content.kind) {
    case 'head':
      return <SheetHead score={score} tempo={tempo} goal={goal} />;
    case 'system':
      return engraved ? <SheetSystem content={content} notation={content.part === 'main' ? notation : otherNotation} /> : null;
    case 'as before': {
      const { range, same, section } = content.item;
      const index = (bar: number): number => notation.bars[bar]?.index ?? (notation.bars.at(-1)?.index ?? 0) + 1;
      return (
        <div className="sheet-as-before">
          {asBeforeWords(section, [index(range.from), index(range.to)], [index(same.from), index(same.to)])}
        </div>
      );
    }
    case 'legend':
      return <Legend notation={notation} />;
    case 'other head':
      return (
        <div className="sheet-other">
          <h3>
            {SHEET_WORDS.other(matter.other.clave)}
            <span className="sheet-hint">{SHEET_WORDS.otherHint}</span>
          </h3>
        </div>
      );
    case 'practice':
      return <PracticeBoxes musicKey={score.key} tempo={tempo} goal={goal} />;
    case 'teacher':
      return (
        <div className="sheet-teacher">
          <div className="sheet-lines">
            <span className="sheet-line">{SHEET_WORDS.teacher}</span>
          </div>
          <p>{SHEET_WORDS.caution}</p>
        </div>
      );
  }
}

function SheetSystem({ content, notation }: { readonly content: Extract<BlockContent, { kind: 'system' }>; readonly notation: Notation }) {
  const { from, to } = content.range;
  const drawing = useMemo(() => ({ notation, from, geometry: content.geometry }), [notation, from, content.geometry]);
  const bars = notation.bars.slice(from, to);
  const label = STAFF_WORDS.system(
    bars[0]?.index ?? 0,
    (bars.at(-1)?.index ?? 0) + 1,
    bars.flatMap((bar) => bar.chords.map((chord) => chord.text)),
  );
  return <EngravedSystem drawing={drawing} label={label} />;
}

/** What needs saying about signs in these very notes, and nothing else. */
function Legend({ notation }: { readonly notation: Notation }) {
  const events = notation.bars.flatMap((bar) => [...bar.staves.right.events, ...bar.staves.left.events, ...bar.staves.bass.events]);
  const lines = [
    ...(events.some((event) => event.firstPassOnly) ? [SHEET_WORDS.firstPass] : []),
    ...(events.some((event) => event.ringsOn) ? [SHEET_WORDS.ringsOn] : []),
    ...(notation.bars.some((bar) => bar.staves.bass.events.some((event) => event.kind === 'notes')) ? [SHEET_WORDS.octaveClef] : []),
  ];
  return <div className="sheet-legend">{lines.join(' ')}</div>;
}
