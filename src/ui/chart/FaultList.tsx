import type { ChartFault } from '../../music/chart/chart';
import { CHART_EDITOR } from '../../words/chart-editor';
import { CHART_SCREEN } from '../../words/chart-screen';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { PAGE_NOTICES } from '../../words/page-notices';
import { SCREEN } from '../../words/screen';
import { useDesk } from '../app/desk-context';
import { Worded } from '../glossary/Worded';

/** At most this many faults are listed at once; the rest follow as these are mended. */
const SHOWN = 40;

/** Every fault with its place, what was expected and, where there is one, the nearest valid text to write with one press. */
export function FaultList(props: { readonly onMark: (fault: ChartFault) => void; readonly onMend: (fault: ChartFault) => void }) {
  const faults = useDesk((state) => state.faults);
  const trouble = useDesk((state) => state.trouble);
  const plays = useDesk((state) => state.music !== null);
  return (
    <section className="faults" aria-label={CHART_SCREEN.faults(faults.length)}>
      {trouble !== null && <p className="wrong">{PAGE_NOTICES.trouble(trouble)}</p>}
      <p id="chart-faults" className="faults-head" role="status">
        {faults.length === 0 ? CHART_SCREEN.noFaults : CHART_SCREEN.faults(faults.length)}
      </p>
      {faults.length > 0 && plays && <p className="caption">{CHART_SCREEN.lastGood}</p>}
      {faults.length > 0 && <p className="caption">{CHART_EDITOR.asOnPaper}</p>}
      <ol>
        {faults.slice(0, SHOWN).map((fault) => (
          <li key={`${fault.line}:${fault.column}:${fault.code}`} className="fault">
            <button type="button" className="fault-place" onClick={() => props.onMark(fault)}>
              {CHART_SCREEN.faultPlace(fault.line, fault.column)}
            </button>
            <span className="fault-words">
              {fault.text !== '' && <mark className="fault-text">{fault.text}</mark>}{' '}
              <Worded text={CHART_SCREEN.expected(MUSIC_TEXTS.expected(fault.expected))} />
            </span>
            {fault.nearest !== null && (
              <button type="button" className="key fault-correct" onClick={() => props.onMend(fault)}>
                {SCREEN.correct(fault.nearest)}
              </button>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
