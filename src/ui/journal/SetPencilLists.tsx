import { type CSSProperties, useEffect, useMemo, useRef, useState } from 'react';
import { listGeometry } from '../../layout/sheet/list-geometry';
import { PAPERS, type PaperName } from '../../layout/sheet/paper';
import { pencilList } from '../../layout/sheet/pencil-list';
import type { Journal } from '../../state/journal/journal';
import type { SetChart } from '../../state/journal/set-study';
import { JOURNAL_WORDS } from '../../words/journal';
import { useDesk } from '../app/desk-context';
import { PencilDrawing } from '../sheet/PencilDrawing';
import { SheetPaper } from '../sheet/SheetPaper';
import { usePageSize } from '../sheet/use-page-size';
import { usePrintedAlone } from '../sheet/use-printed-alone';
import { useWidth } from '../staff/use-width';
import '../sheet/sheet.css';

/** CSS pixels in a millimetre, by definition of the unit. */
const PX_PER_MM = 96 / 25.4;

/** The pencil lists of a whole set, a page for each chart in the order of the set: asked for, looked at, printed in one go. */
export function SetPencilLists({ journal }: { readonly journal: Journal }) {
  const [charts, setCharts] = useState<readonly SetChart[] | null>(null);
  const [printing, print] = usePrintedAlone();
  return (
    <div className={printing ? 'set-pencil printed-alone' : 'set-pencil'}>
      <div className="journal-row no-print">
        <button
          type="button"
          className="key"
          aria-expanded={charts !== null}
          onClick={() => (charts ? setCharts(null) : void journal.setCharts().then(setCharts))}
        >
          {charts ? JOURNAL_WORDS.pencilAway : JOURNAL_WORDS.pencil}
        </button>
        {charts && (
          <button type="button" className="key" onClick={print}>
            {JOURNAL_WORDS.pencilPrint(charts.length)}
          </button>
        )}
      </div>
      {charts && <Pages charts={charts} />}
      {printing && <PageSize />}
    </div>
  );
}

function Pages({ charts }: { readonly charts: readonly SetChart[] }) {
  const paper = useDesk((state) => state.preferences.paper);
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const zoom = width === null ? 1 : Math.min(1, width / (PAPERS[paper].width * PX_PER_MM));
  // Asked for below a long list of moves, they come into sight, under the key that prints them.
  useEffect(() => frame.current?.parentElement?.scrollIntoView({ block: 'start' }), []);
  return (
    <div ref={frame} className="set-pencil-frame">
      <div className="sheet-pages" style={{ '--sheet-zoom': zoom } as CSSProperties}>
        {charts.map((chart, page) => (
          <Page key={chart.id} chart={chart} paper={paper} page={page} pages={charts.length} />
        ))}
      </div>
    </div>
  );
}

interface PageProps {
  readonly chart: SetChart;
  readonly paper: PaperName;
  readonly page: number;
  readonly pages: number;
}

function Page({ chart, paper, page, pages }: PageProps) {
  const { score, goal, breaks } = chart;
  const list = useMemo(() => pencilList(score), [score]);
  const geometry = useMemo(() => listGeometry(list, breaks, paper), [list, breaks, paper]);
  return (
    <SheetPaper paper={paper} title={score.title} page={page} pages={pages} all={true}>
      {() => <PencilDrawing list={list} geometry={geometry} score={score} goal={goal} />}
    </SheetPaper>
  );
}

/** The paper's own size, for as long as it is printed. */
function PageSize() {
  usePageSize(useDesk((state) => state.preferences.paper));
  return null;
}
