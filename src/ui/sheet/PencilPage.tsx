import { useMemo } from 'react';
import { listGeometry } from '../../layout/sheet/list-geometry';
import type { PaperName } from '../../layout/sheet/paper';
import { pencilList } from '../../layout/sheet/pencil-list';
import type { Score } from '../../music/score';
import { PENCIL_WORDS } from '../../words/pencil-list';
import { PencilDrawing } from './PencilDrawing';
import { SheetPaper } from './SheetPaper';

/** What the pencil list is given. */
export interface PencilPageProps {
  readonly score: Score;
  readonly goal: number;
  readonly breaks: readonly number[] | null;
  readonly onBreaks: (breaks: readonly number[]) => void;
  readonly paper: PaperName;
}

/** The pencil list on its one page; on the screen the gap behind each bar can be touched to end the line there, or to go on. */
export function PencilPage({ score, goal, breaks, onBreaks, paper }: PencilPageProps) {
  const list = useMemo(() => pencilList(score), [score]);
  const geometry = useMemo(() => listGeometry(list, breaks, paper), [list, breaks, paper]);
  const lines = geometry.blocks.flatMap((block) => block.lines);
  const toggle = (place: number): void => {
    const now = new Set(lines.flatMap((line) => line.bars.filter((bar) => bar.breakable && bar.endsLine).map((bar) => bar.bar.place + 1)));
    if (!now.delete(place)) now.add(place);
    onBreaks([...now].toSorted((a, b) => a - b));
  };
  const share = (mm: number, whole: number): string => `${(100 * mm) / whole}%`;
  return (
    <SheetPaper paper={paper} title={score.title} page={0} pages={1} all={true}>
      {() => (
        <>
          <PencilDrawing list={list} geometry={geometry} score={score} goal={goal} />
          {lines.flatMap((line) =>
            line.bars
              .filter((place) => place.breakable)
              .map((place) => (
                <button
                  key={place.bar.place}
                  type="button"
                  className="sheet-break"
                  aria-label={PENCIL_WORDS.breakHere(place.bar.place + 1)}
                  aria-pressed={place.endsLine}
                  style={{
                    left: share(place.x + place.width, geometry.width),
                    top: share(line.y, geometry.height),
                    height: share(geometry.lineHeight, geometry.height),
                  }}
                  onClick={() => toggle(place.bar.place + 1)}
                />
              )),
          )}
        </>
      )}
    </SheetPaper>
  );
}
