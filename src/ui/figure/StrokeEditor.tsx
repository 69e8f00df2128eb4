import type { FigureEdit } from '../../music/montuno/edits';
import type { Stroke } from '../../vocabulary';
import { PAD_WORDS } from '../../words/rhythm-pad';
import './figure.css';

/** The place that was touched on the grid. */
export interface TouchedPlace {
  readonly bar: number;
  readonly step: number;
  readonly stroke: Stroke | null;
}

/** Changes one stroke by hand: out, in, a half step, longer or shorter; every change can be undone. */
export function StrokeEditor(props: {
  readonly place: TouchedPlace;
  readonly changes: number;
  readonly undone: number;
  readonly onEdit: (edit: FigureEdit) => void;
  readonly onUndo: () => void;
  readonly onRedo: () => void;
  readonly onReset: () => void;
  readonly onClose: () => void;
}) {
  const { bar, step, stroke } = props.place;
  const steps = stroke ? Math.max(1, Math.round(stroke.durationTicks / 240)) : 1;
  const key = (label: string, edit: FigureEdit, off = false) => (
    <button type="button" className="key" disabled={off} onClick={() => props.onEdit(edit)}>
      {label}
    </button>
  );
  return (
    <section className="stroke-editor" aria-label={PAD_WORDS.editor}>
      <p>
        <strong>{PAD_WORDS.editor}</strong>: {PAD_WORDS.place(bar, step)}
        {stroke && ` · ${stroke.names.join(' ')}`}
      </p>
      <div className="group-row">
        {stroke ? (
          <>
            {key(PAD_WORDS.off, { bar, step, change: 'off' })}
            {key(PAD_WORDS.down, { bar, step, change: 'pitch', semitones: -1 })}
            {key(PAD_WORDS.up, { bar, step, change: 'pitch', semitones: 1 })}
            {key(PAD_WORDS.shorter, { bar, step, change: 'length', steps: steps - 1 }, steps <= 1)}
            {key(PAD_WORDS.longer, { bar, step, change: 'length', steps: steps + 1 }, steps >= 16)}
          </>
        ) : (
          <>
            {key(PAD_WORDS.on, { bar, step, change: 'on', as: 'octave' })}
            {key(PAD_WORDS.onInner, { bar, step, change: 'on', as: 'inner' })}
          </>
        )}
        <button type="button" className="key" disabled={props.changes === 0} onClick={props.onUndo}>
          {PAD_WORDS.undo}
        </button>
        <button type="button" className="key" disabled={props.undone === 0} onClick={props.onRedo}>
          {PAD_WORDS.redo}
        </button>
        <button type="button" className="key" disabled={props.changes === 0} onClick={props.onReset}>
          {PAD_WORDS.reset}
        </button>
        <button type="button" className="key" onClick={props.onClose}>
          {PAD_WORDS.close}
        </button>
      </div>
      <p className="caption">{PAD_WORDS.changes(props.changes)}</p>
    </section>
  );
}
