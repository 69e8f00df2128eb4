import { type ReactNode, useEffect, useId, useState } from 'react';
import { CHART_SCREEN } from '../../words/chart-screen';
import { useDesk, useRun } from '../app/desk-context';
import { InkLayer } from './InkLayer';
import { KeyRow } from './KeyRow';
import type { TextField } from './use-text-field';

/** Height of a line of chart text in CSS pixels; chart.css holds the same. */
const LINE_PX = 26;
const ROWS = { least: 12, most: 26 };

/** The chart as text, and under it what belongs to the caret (`children`). Every keystroke is read; the text stays exactly as typed. */
export function ChartEditor({ field, children }: { readonly field: TextField; readonly children: ReactNode }) {
  const run = useRun();
  const text = useDesk((state) => state.text);
  const faults = useDesk((state) => state.faults);
  const id = useId();
  const [scroll, setScroll] = useState({ left: 0, top: 0 });
  const lines = text.split('\n').length;
  const rows = Math.min(ROWS.most, Math.max(ROWS.least, lines + 1));
  useOwnUndo(field);
  return (
    <section className="editor" aria-label={CHART_SCREEN.chartText}>
      <label className="visually-hidden" htmlFor={id}>
        {CHART_SCREEN.chartText}
      </label>
      <div className="editor-frame">
        <KeyRow field={field} />
        <div className="editor-desk">
          <div className="ink-layer" aria-hidden="true">
            <div className="ink-sheet" style={{ transform: `translate(${-scroll.left}px, ${-scroll.top}px)` }}>
              <InkLayer text={text} faults={faults} top={Math.floor(scroll.top / LINE_PX)} rows={rows * 2} />
            </div>
          </div>
          <textarea
            ref={field.ref}
            id={id}
            className="editor-text"
            value={text}
            spellCheck={false}
            autoCapitalize="off"
            autoComplete="off"
            autoCorrect="off"
            wrap="off"
            rows={rows}
            aria-invalid={faults.length > 0}
            aria-describedby="chart-faults"
            onChange={(event) => run({ kind: 'type', text: event.target.value })}
            onSelect={field.follow}
            onScroll={(event) => setScroll({ left: event.currentTarget.scrollLeft, top: event.currentTarget.scrollTop })}
          />
        </div>
      </div>
      {children}
      <KeepingLine />
    </section>
  );
}

/** Whether what is typed is kept on this device. */
function KeepingLine() {
  const keeping = useDesk((state) => state.keeping);
  const refused = keeping.kind === 'refused';
  const wrong = refused || keeping.kind === 'late' || keeping.kind === 'cleared';
  return (
    <p className={wrong ? 'keeping wrong' : 'keeping'} role={wrong ? 'alert' : undefined}>
      {CHART_SCREEN.keeping(keeping.kind, refused ? keeping.reason : null)}
    </p>
  );
}

/** The browser's own undo ends where a key of ours wrote; the chart's history takes its place, whatever way it is asked for. */
function useOwnUndo(field: TextField): void {
  useEffect(() => {
    const area = field.ref.current;
    if (!area) return;
    const onKeyDown = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) field.redo();
      else field.undo();
    };
    const onBeforeInput = (event: InputEvent): void => {
      if (event.inputType !== 'historyUndo' && event.inputType !== 'historyRedo') return;
      event.preventDefault();
      if (event.inputType === 'historyRedo') field.redo();
      else field.undo();
    };
    area.addEventListener('keydown', onKeyDown);
    area.addEventListener('beforeinput', onBeforeInput);
    return () => {
      area.removeEventListener('keydown', onKeyDown);
      area.removeEventListener('beforeinput', onBeforeInput);
    };
  }, [field]);
}
