import { StrokeEditor, type TouchedPlace } from '../figure/StrokeEditor';
import { useDesk, useRun } from './desk-context';

/** The editor for the stroke that was touched, joined to the desk. Its stroke is looked up again after every change. */
export function StrokeEditing({ place, onClose }: { readonly place: TouchedPlace; readonly onClose: () => void }) {
  const run = useRun();
  const edits = useDesk((state) => state.settings.edits.length);
  const undone = useDesk((state) => state.settings.undoneEdits.length);
  const score = useDesk((state) => state.music?.score ?? null);
  const bar = score?.bars.find(({ index }) => index === place.bar);
  const tick = bar ? bar.tick + place.step * 240 : -1;
  const stroke = score?.parts.rightHand.find((candidate) => candidate.tick === tick) ?? null;
  if (bar?.playing !== 'band') return null;
  return (
    <StrokeEditor
      place={{ ...place, stroke }}
      changes={edits}
      undone={undone}
      onEdit={(edit) => run({ kind: 'edit', edit })}
      onUndo={() => run({ kind: 'undo edit' })}
      onRedo={() => run({ kind: 'redo edit' })}
      onReset={() => run({ kind: 'reset edits' })}
      onClose={onClose}
    />
  );
}
