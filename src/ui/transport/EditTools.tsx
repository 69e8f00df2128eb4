import { EDIT_SCREEN } from '../../words/own-figure-screen';
import { useDesk, useRun } from '../app/desk-context';

/** Changes made to strokes by hand: how many, and the way back. Nothing until there are some. */
export function EditTools() {
  const run = useRun();
  const made = useDesk((state) => state.settings.edits.length);
  const undone = useDesk((state) => state.settings.undoneEdits.length);
  if (made + undone === 0) return null;
  return (
    <fieldset className="choice choice-loose">
      <legend>{EDIT_SCREEN.name}</legend>
      <p className="caption">{EDIT_SCREEN.count(made)}</p>
      <div className="choice-row">
        <button type="button" className="key" aria-disabled={made === 0} onClick={() => run({ kind: 'undo edit' })}>
          {EDIT_SCREEN.undo}
        </button>
        <button type="button" className="key" aria-disabled={undone === 0} onClick={() => run({ kind: 'redo edit' })}>
          {EDIT_SCREEN.redo}
        </button>
        <button type="button" className="key" aria-disabled={made === 0} onClick={() => run({ kind: 'reset edits' })}>
          {EDIT_SCREEN.reset}
        </button>
      </div>
    </fieldset>
  );
}
