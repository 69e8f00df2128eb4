import { useState } from 'react';
import { useStore } from 'zustand';
import type { Library } from '../../state/library/library';
import { CHART_EDITOR } from '../../words/chart-editor';
import { CHART_SCREEN } from '../../words/chart-screen';
import { LINK_WORDS } from '../../words/link';
import { useDesk, useRun } from '../app/desk-context';
import { MakeLink } from './MakeLink';
import type { TextField } from './use-text-field';

/** What is done with the whole chart: begin another, hand it out, take changes back, write it in another key. */
export function EditorHead({ library, field }: { readonly library: Library | null; readonly field: TextField }) {
  const run = useRun();
  const [linking, setLinking] = useState(false);
  const chartId = useDesk((state) => state.chartId);
  return (
    <div className="editor-head">
      <h2>{CHART_SCREEN.chartText}</h2>
      <button type="button" className="key" onClick={() => run({ kind: 'new chart' })}>
        {CHART_SCREEN.newChart}
      </button>
      <button type="button" className="key" disabled={!library} onClick={() => library?.saveText(chartId)}>
        {CHART_SCREEN.saveChart}
      </button>
      <button type="button" className="key" onClick={() => run({ kind: 'save midi' })}>
        {CHART_SCREEN.saveMidi}
      </button>
      <button type="button" className="key" aria-expanded={linking} onClick={() => setLinking(!linking)}>
        {LINK_WORDS.make}
      </button>
      {library && <Steps library={library} field={field} />}
      {linking && <MakeLink onClose={() => setLinking(false)} />}
    </div>
  );
}

function Steps({ library, field }: { readonly library: Library; readonly field: TextField }) {
  const canUndo = useStore(library.editing.store, (state) => state.canUndo);
  const canRedo = useStore(library.editing.store, (state) => state.canRedo);
  const faulty = useDesk((state) => state.faults.length > 0);
  return (
    <>
      <div className="editor-steps">
        <button type="button" className="key" disabled={!canUndo} onClick={field.undo}>
          {CHART_EDITOR.undo}
        </button>
        <button type="button" className="key" disabled={!canRedo} onClick={field.redo}>
          {CHART_EDITOR.redo}
        </button>
      </div>
      <fieldset className="editor-steps" title={faulty ? CHART_EDITOR.transposeAfterFaults : undefined}>
        <legend className="visually-hidden">{CHART_EDITOR.transposeName}</legend>
        <span aria-hidden="true">{CHART_EDITOR.key}</span>
        <button
          type="button"
          className="key"
          aria-label={CHART_EDITOR.halfStepLower}
          title={CHART_EDITOR.halfStepLower}
          disabled={faulty}
          onClick={() => library.transpose(-1)}
        >
          {CHART_EDITOR.lower}
        </button>
        <button
          type="button"
          className="key"
          aria-label={CHART_EDITOR.halfStepHigher}
          title={CHART_EDITOR.halfStepHigher}
          disabled={faulty}
          onClick={() => library.transpose(1)}
        >
          {CHART_EDITOR.higher}
        </button>
      </fieldset>
    </>
  );
}
