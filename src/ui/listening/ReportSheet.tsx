import type { Listening } from '../../state/listening/listening';
import type { PassReport } from '../../state/listening/listening-state';
import { barAt } from '../../state/loop';
import { FINDINGS } from '../../words/findings';
import { LISTENING } from '../../words/listening';
import { useDesk } from '../app/desk-context';
import { usePanel } from '../app/use-panel';
import { CalibrationOffer } from './CalibrationOffer';
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
  const asked = matched.strokes.filter(({ label }) => label !== 'extra').length;
  const right = matched.strokes.filter(({ label }) => label === 'right' || label === 'early' || label === 'late').length;
  return (
    <section ref={panel} className="report" aria-label={LISTENING.report} tabIndex={-1}>
      <div className="report-said">
        <h2>
          {LISTENING.pass(pass, wholePass)}
          {': '}
          {assessment.clean ? LISTENING.clean : LISTENING.share(right, asked)} {assessment.timing === 'in time' && LISTENING.inTime}
        </h2>
        {assessment.findings.length === 0 && <p>{LISTENING.nothing}</p>}
        <ol className="findings">
          {assessment.findings.map((finding) => (
            <li key={`${finding.facts.kind} ${finding.loop.fromBar}`}>
              <p>{FINDINGS.sentence(finding.facts)}</p>
              <LoopButton listening={listening} report={report} fromBar={finding.loop.fromBar} toBar={finding.loop.toBar} />
            </li>
          ))}
        </ol>
        <CalibrationOffer listening={listening} timing={take.timing} />
      </div>
      <div className="report-seen">
        <StepPictureView steps={assessment.steps} stepMs={matched.strokes[0]?.expected?.stepMs ?? null} />
        <div className="report-heard">
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

function LoopButton(props: {
  readonly listening: Listening;
  readonly report: PassReport;
  readonly fromBar: number;
  readonly toBar: number;
}) {
  const { listening, report, fromBar, toBar } = props;
  const form = useDesk((state) => state.music?.score.form.bars ?? null);
  const { bars } = report.take.music.performance;
  const first = bars[fromBar];
  const last = bars[toBar - 1];
  if (!form || !first || !last) return null;
  return (
    <button type="button" className="key" onClick={() => listening.loop({ fromBar, toBar })}>
      {LISTENING.loopIt(barAt(form, first.tick) + 1, barAt(form, last.tick) + 1)}
    </button>
  );
}
