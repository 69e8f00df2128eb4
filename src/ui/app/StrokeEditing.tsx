import { TICKS_PER_STEP } from '../../vocabulary';
import { StrokeEditor } from '../figure/StrokeEditor';
import type { SelectedCell } from '../practise/board-props';
import { useDesk, useRun } from './desk-context';
import { useWhy } from './use-why';

/** The editor for the place that was touched, joined to the desk. Its stroke is looked up again after every change. */
export function StrokeEditing({ place, onClose }: { readonly place: SelectedCell; readonly onClose: () => void }) {
  const run = useRun();
  const edits = useDesk((state) => state.settings.edits.length);
  const undone = useDesk((state) => state.settings.undoneEdits.length);
  const music = useDesk((state) => state.music);
  const why = useWhy();
  const score = music?.score;
  const bar = score?.bars.find(({ index }) => index === place.bar);
  if (!music || !score || bar?.playing !== 'band') return null;
  const tick = bar.tick + place.step * TICKS_PER_STEP;
  const stroke = score.parts.rightHand.find((candidate) => candidate.tick === tick) ?? null;
  // A stroke of another part that was touched is explained as well; what is changed is the right hand's.
  const touched = place.stroke;
  const everything = [...score.parts.rightHand, ...score.parts.leftHand, ...score.parts.bass];
  const explained = touched && everything.includes(touched as (typeof everything)[number]) ? touched : stroke;
  return (
    <StrokeEditor
      place={{ bar: place.bar, step: place.step, side: bar.side, sixEight: score.meter === '6/8', stroke }}
      scale={score.key}
      why={explained ? why(explained, music.whole.bars) : ''}
      changes={edits}
      undone={undone}
      onEdit={(edit) => run({ kind: 'edit', edit: { ...edit, side: bar.side } })}
      onUndo={() => run({ kind: 'undo edit' })}
      onRedo={() => run({ kind: 'redo edit' })}
      onReset={() => run({ kind: 'reset edits' })}
      onClose={onClose}
    />
  );
}
