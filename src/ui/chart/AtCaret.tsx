import { useMemo } from 'react';
import type { ChartFault } from '../../music/chart/chart';
import { placeInText } from '../../state/chart-text';
import { completionAt } from '../../state/editing/complete';
import { CHART_EDITOR } from '../../words/chart-editor';
import { CHART_SCREEN } from '../../words/chart-screen';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { useDesk } from '../app/desk-context';
import { keepFocus } from './KeyRow';
import type { TextField } from './use-text-field';

/**
 * One row under the text that belongs to the caret: what is wrong there and the one press that mends it, else what could be written, else
 * the first fault of the chart. It keeps its height, so that nothing moves while typing.
 */
export function AtCaret({ field, onMend }: { readonly field: TextField; readonly onMend: (fault: ChartFault) => void }) {
  const text = useDesk((state) => state.text);
  const faults = useDesk((state) => state.faults);
  const { caret } = field;
  const here = faults.find((fault) => stands(text, fault, caret));
  const completion = useMemo(() => completionAt(text, caret), [text, caret]);
  const fault = here ?? (completion ? null : faults[0]);
  return (
    <div className="at-caret" role="toolbar" aria-label={CHART_EDITOR.atCaretName}>
      {fault && <CaretFault fault={fault} onMend={onMend} />}
      {!fault && completion && (
        <>
          <span className="caption">{CHART_EDITOR.couldBe}</span>
          {completion.options.map((option) => (
            <button
              key={option}
              type="button"
              className="sign-key"
              aria-label={CHART_EDITOR.write(option)}
              onPointerDown={keepFocus}
              onClick={() => field.write(completion.from, completion.to, option)}
            >
              {option}
            </button>
          ))}
        </>
      )}
      {!fault && !completion && <span className="caption">{CHART_EDITOR.nothingAtCaret}</span>}
    </div>
  );
}

function CaretFault({ fault, onMend }: { readonly fault: ChartFault; readonly onMend: (fault: ChartFault) => void }) {
  return (
    <>
      {fault.nearest !== null && (
        <button type="button" className="sign-key" onPointerDown={keepFocus} onClick={() => onMend(fault)}>
          {CHART_EDITOR.write(fault.nearest)}
        </button>
      )}
      <span className="caret-fault">
        {fault.text !== '' && <mark className="fault-text">{fault.text}</mark>}{' '}
        {CHART_SCREEN.expected(MUSIC_TEXTS.expected(fault.expected))}
      </span>
    </>
  );
}

const stands = (text: string, fault: ChartFault, caret: number): boolean => {
  const from = placeInText(text, fault.line, fault.column);
  return caret >= from && caret <= from + fault.text.length;
};
