import type { RefObject } from 'react';
import type { ChartFault } from '../../music/chart/chart';
import { corrected, placeInText } from '../../state/chart-text';
import { CHART_SCREEN } from '../../words/chart-screen';
import { PAGE_NOTICES } from '../../words/page-notices';
import { SCREEN } from '../../words/screen';
import { useDesk, useRun } from '../app/desk-context';

/** At most this many faults are listed at once; the rest follow as these are mended. */
const SHOWN = 40;

/** Every fault with its place, what was expected and, where there is one, the nearest valid text to write with one press. */
export function FaultList({ field }: { readonly field: RefObject<HTMLTextAreaElement | null> }) {
  const run = useRun();
  const text = useDesk((state) => state.text);
  const faults = useDesk((state) => state.faults);
  const trouble = useDesk((state) => state.trouble);
  const plays = useDesk((state) => state.music !== null);

  const mark = (fault: ChartFault): void => {
    const start = placeInText(text, fault.line, fault.column);
    field.current?.focus();
    field.current?.setSelectionRange(start, start + fault.text.length);
  };

  const correct = (fault: ChartFault): void => {
    mark(fault);
    // Writing through the browser keeps its own undo; where that is refused the text is set.
    const written = typeof document.execCommand === 'function' && document.execCommand('insertText', false, fault.nearest ?? fault.text);
    if (!written) run({ kind: 'type', text: corrected(text, fault) });
  };

  return (
    <section className="faults" aria-label={CHART_SCREEN.faults(faults.length)}>
      {trouble !== null && <p className="wrong">{PAGE_NOTICES.trouble(trouble)}</p>}
      <p className="faults-head" role="status">
        {faults.length === 0 ? CHART_SCREEN.noFaults : CHART_SCREEN.faults(faults.length)}
      </p>
      {faults.length > 0 && plays && <p className="caption">{CHART_SCREEN.lastGood}</p>}
      <ol>
        {faults.slice(0, SHOWN).map((fault) => (
          <li key={`${fault.line}:${fault.column}:${fault.code}`} className="fault">
            <button type="button" className="fault-place" onClick={() => mark(fault)}>
              {CHART_SCREEN.faultPlace(fault.line, fault.column)}
            </button>
            <span className="fault-words">
              {fault.text !== '' && <mark className="fault-text">{fault.text}</mark>} {CHART_SCREEN.expected(fault.expected)}
            </span>
            {fault.nearest !== null && (
              <button type="button" className="key fault-correct" onClick={() => correct(fault)}>
                {SCREEN.correct(fault.nearest)}
              </button>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
