import { useState } from 'react';
import type { Listening, PassReport } from '../../state/listening/listening-state';
import type { PlayedFigure } from '../../state/listening/played-figure';
import { barAt } from '../../state/loop';
import { FINDINGS } from '../../words/findings';
import { LISTENING } from '../../words/listening';
import { useDesk } from '../app/desk-context';
import { usePanel } from '../app/use-panel';
import { CalibrationOffer } from './CalibrationOffer';
import { FindingList } from './FindingList';
import { isMisplaced } from './misplaced';
import { PlayedInSheet } from './PlayedInSheet';
import { StepPictureView } from './StepPictureView';

/** What is given to the report. */
export interface ReportSheetProps {
  readonly listening: Listening;
  readonly report: PassReport;
  readonly onClose: () => void;
}

/** What happened: at most three sentences, the worst first, each with the loop that mends it; the picture of the steps; and the take to be heard again. */
export function ReportSheet({ listening, report, onClose }: ReportSheetProps) {
  const panel = usePanel(onClose);
  const { take, matched, assessment, pass, wholePass } = report;
  const [playedIn, setPlayedIn] = useState<PlayedFigure | null>(null);
  const form = useDesk((state) => state.music?.score.form.bars ?? null);
  const { bars } = take.music.performance;
  const barOf = (index: number): number => {
    const tick = bars[index]?.tick;
    return form && tick !== undefined ? barAt(form, tick) : index;
  };
  const asked = matched.strokes.filter(({ label }) => label !== 'extra').length;
  const right = matched.strokes.filter(({ label }) => label === 'right' || label === 'early' || label === 'late').length;
  // What lies in the wrong place as a whole is neither right nor in time, stroke by stroke.
  const misplaced = isMisplaced(report);
  const inTime = assessment.timing === 'in time' ? ` ${LISTENING.inTime}` : '';
  const verdict = misplaced ? null : `${assessment.clean ? LISTENING.clean : LISTENING.share(right, asked)}${inTime}`;
  return (
    <section ref={panel} className="report" aria-label={LISTENING.report} tabIndex={-1}>
      {playedIn && <PlayedInSheet played={playedIn} onClose={() => setPlayedIn(null)} />}
      <div className="report-said">
        <button type="button" className="plain report-hide" onClick={onClose}>
          {LISTENING.hideReport}
        </button>
        <h2>
          {LISTENING.pass(pass, wholePass)}
          {verdict && `: ${verdict}`}
        </h2>
        {!wholePass && <p className="caption">{LISTENING.partOnly}</p>}
        {report.together > 1 && assessment.findings.length > 0 && <p className="caption">{LISTENING.together(report.together)}</p>}
        {assessment.findings.length === 0 && <p>{FINDINGS.nothing}</p>}
        <FindingList listening={listening} report={report} barOf={barOf} />
        <CalibrationOffer listening={listening} report={report} />
      </div>
      <div className="report-seen">
        <StepPictureView steps={assessment.steps} stepMs={matched.strokes[0]?.expected?.stepMs ?? null} />
        <div className="report-heard">
          {take.pitched && (
            <button type="button" className="key" onClick={() => setPlayedIn(listening.readFigure())}>
              {LISTENING.playIn}
            </button>
          )}
          <button type="button" className="key" onClick={() => listening.replay('clave', 0)}>
            {LISTENING.replay}
          </button>
          {assessment.clean && take.pitched && (
            <button type="button" className="key" title={LISTENING.otherSideHint} onClick={() => listening.replay('band', 1)}>
              {LISTENING.otherSide}
            </button>
          )}
        </div>
      </div>
    </section>
  );
}
