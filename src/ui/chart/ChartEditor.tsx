import { type RefObject, useId } from 'react';
import { CHART_SCREEN } from '../../words/chart-screen';
import { useDesk, useRun } from '../app/desk-context';

/** The chart as text. Every keystroke is read; the text stays exactly as typed. */
export function ChartEditor({ field }: { readonly field: RefObject<HTMLTextAreaElement | null> }) {
  const run = useRun();
  const text = useDesk((state) => state.text);
  const faulty = useDesk((state) => state.faults.length > 0);
  const keeping = useDesk((state) => state.keeping);
  const id = useId();
  return (
    <section className="editor" aria-label={CHART_SCREEN.chartText}>
      <div className="editor-head">
        <label htmlFor={id}>{CHART_SCREEN.chartText}</label>
        <button type="button" className="key" onClick={() => run({ kind: 'new chart' })}>
          {CHART_SCREEN.newChart}
        </button>
        <button type="button" className="key" onClick={() => run({ kind: 'save chart' })}>
          {CHART_SCREEN.saveChart}
        </button>
        <button type="button" className="key" onClick={() => run({ kind: 'save midi' })}>
          {CHART_SCREEN.saveMidi}
        </button>
      </div>
      <textarea
        ref={field}
        id={id}
        className="editor-text"
        value={text}
        spellCheck={false}
        autoCapitalize="off"
        autoComplete="off"
        autoCorrect="off"
        wrap="off"
        rows={Math.min(26, Math.max(12, text.split('\n').length + 1))}
        aria-invalid={faulty}
        aria-describedby={`${id}-faults`}
        onChange={(event) => run({ kind: 'type', text: event.target.value })}
      />
      <p className={keeping.kind === 'refused' ? 'keeping wrong' : 'keeping'} role={keeping.kind === 'refused' ? 'alert' : undefined}>
        {CHART_SCREEN.keeping(keeping.kind, keeping.kind === 'refused' ? keeping.reason : null)}
      </p>
    </section>
  );
}
