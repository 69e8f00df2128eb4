import { useCallback, useRef } from 'react';
import { CHART_SCREEN } from '../../words/chart-screen';
import { NOTICES } from '../../words/notice';
import { SCREEN } from '../../words/screen';
import { useDesk, usePlaying, useRun } from '../app/desk-context';
import { BarsAsTheySound } from './BarsAsTheySound';
import { ChartEditor } from './ChartEditor';
import { FaultList } from './FaultList';
import { Shelf } from './Shelf';
import './chart.css';

/** Notices that stand at the section's own head. */
const AT_SECTION: readonly string[] = ['odd section', 'section on the other side'];
/** No notices, always the same value. */
const NONE: readonly never[] = [];

/** The Chart place: text on one side, its bars as they sound on the other, faults between them, and the shelf below. */
export function ChartPage() {
  const run = useRun();
  const field = useRef<HTMLTextAreaElement>(null);
  const form = useDesk((state) => state.music?.whole.form ?? null);
  const notices = useDesk((state) => state.music?.whole.notices ?? NONE);
  const stale = useDesk((state) => state.faults.length > 0);
  const cursor = usePlaying((state) => state.bar);
  const startAt = useCallback((bar: number) => run({ kind: 'start at bar', bar }), [run]);
  return (
    <div className="chart-page">
      <div className="chart-write">
        <ChartEditor field={field} />
        <FaultList field={field} />
      </div>
      <div className={stale ? 'chart-read chart-stale' : 'chart-read'}>
        <h2>{CHART_SCREEN.asItSounds}</h2>
        <ul className="chart-notices">
          {[...new Set(notices.filter(({ code }) => !AT_SECTION.includes(code)).map((notice) => NOTICES.sentence(notice)))]
            .slice(0, 12)
            .map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
        </ul>
        {form ? <BarsAsTheySound form={form} cursor={cursor} onStartAt={startAt} /> : <p>{SCREEN.noMusic}</p>}
      </div>
      <Shelf />
    </div>
  );
}
