import { OWN_FIGURE_SCREEN } from '../../words/own-figure-screen';
import { useDesk, useRun } from '../app/desk-context';

/** Changes made to strokes by hand: how many, and the way back. Nothing until there are some. */
export function EditTools() {
  const run = useRun();
  const made = useDesk((state) => state.settings.edits.length);
  const undone = useDesk((state) => state.settings.undoneEdits.length);
  if (made + undone === 0) return null;
  return (
    <fieldset className="choice choice-loose">
      <legend>{OWN_FIGURE_SCREEN.edits.name}</legend>
      <p className="caption">{OWN_FIGURE_SCREEN.edits.count(made)}</p>
      <div className="choice-row">
        <button type="button" className="key" aria-disabled={made === 0} onClick={() => run({ kind: 'undo edit' })}>
          {OWN_FIGURE_SCREEN.edits.undo}
        </button>
        <button type="button" className="key" aria-disabled={undone === 0} onClick={() => run({ kind: 'redo edit' })}>
          {OWN_FIGURE_SCREEN.edits.redo}
        </button>
        <button type="button" className="key" aria-disabled={made === 0} onClick={() => run({ kind: 'reset edits' })}>
          {OWN_FIGURE_SCREEN.edits.reset}
        </button>
      </div>
    </fieldset>
  );
}
