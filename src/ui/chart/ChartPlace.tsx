import { useCallback } from 'react';
import type { ChartFault } from '../../music/chart/chart';
import { placeInText } from '../../state/chart-text';
import { CHART_SCREEN } from '../../words/chart-screen';
import { NOTICES } from '../../words/notice';
import { SCREEN } from '../../words/screen';
import { useDesk, useDeskItself, usePlaying, useRun } from '../app/desk-context';
import { AtCaret } from './AtCaret';
import { BarsAsTheySound } from './BarsAsTheySound';
import { ChartEditor } from './ChartEditor';
import { EditorHead } from './EditorHead';
import { FaultList } from './FaultList';
import { FilesDrop } from './FilesDrop';
import { PlaceSteps } from './PlaceSteps';
import { Shelf } from './Shelf';
import { useLibrary } from './use-library';
import { useTextField } from './use-text-field';
import './chart.css';

/** Notices that stand at the section's own head. */
const AT_SECTION: readonly string[] = ['odd section', 'section on the other side'];
/** No notices, always the same value. */
const NONE: readonly never[] = [];

/** The Chart place: text on one side, its bars as they sound on the other, faults between them, and the shelf below. */
export function ChartPlace() {
  const { desk } = useDeskItself();
  const library = useLibrary();
  const field = useTextField(library?.editing ?? null);
  const placeOf = (fault: ChartFault): readonly [number, number] => {
    const from = placeInText(desk.getState().text, fault.line, fault.column);
    return [from, from + fault.text.length];
  };
  const mend = (fault: ChartFault): void => {
    const [from, to] = placeOf(fault);
    // Only what the fault is about is written over, never what was typed there since.
    if (fault.nearest !== null && desk.getState().text.slice(from, to) === fault.text) field.write(from, to, fault.nearest);
  };
  return (
    <FilesDrop library={library}>
      <div className="chart-page">
        <PlaceSteps there={library !== null} />
        <div className="chart-write">
          <EditorHead library={library} field={field} />
          <ChartEditor field={field}>
            <AtCaret field={field} onMend={mend} />
          </ChartEditor>
          <FaultList onMark={(fault) => field.select(...placeOf(fault))} onMend={mend} />
        </div>
        <ChartRead />
        {library && <Shelf library={library} />}
      </div>
    </FilesDrop>
  );
}

function ChartRead() {
  const run = useRun();
  const form = useDesk((state) => state.music?.whole.form ?? null);
  const notices = useDesk((state) => state.music?.whole.notices ?? NONE);
  const stale = useDesk((state) => state.faults.length > 0);
  const cursor = usePlaying((state) => state.bar);
  const startAt = useCallback((bar: number) => run({ kind: 'start at bar', bar }), [run]);
  const sentences = [...new Set(notices.filter(({ code }) => !AT_SECTION.includes(code)).map((notice) => NOTICES.sentence(notice)))];
  return (
    <div className={stale ? 'chart-read chart-stale' : 'chart-read'}>
      <h2>{CHART_SCREEN.asItSounds}</h2>
      <ul className="chart-notices">
        {sentences.slice(0, 12).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {form ? <BarsAsTheySound form={form} cursor={cursor} onStartAt={startAt} /> : <p>{SCREEN.noMusic}</p>}
    </div>
  );
}
