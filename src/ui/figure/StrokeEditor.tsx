import { scaleStep } from '../../layout/figure/scale-step';
import type { FigureEdit } from '../../music/montuno/edits';
import type { Key } from '../../music/pitch/key';
import type { Side, Stroke } from '../../vocabulary';
import { TICKS_PER_STEP } from '../../vocabulary';
import { PAD_WORDS } from '../../words/rhythm-pad';
import { printedNote } from '../../words/spoken';
import { usePanel } from '../app/use-panel';
import { ReasonedButton } from './ReasonedButton';
import './figure.css';
import { Worded } from '../glossary/Worded';

/** The place that was touched on the grid, with the right hand's stroke that is struck there. */
export interface TouchedPlace {
  readonly bar: number;
  readonly side: Side;
  readonly step: number;
  readonly sixEight: boolean;
  readonly stroke: Stroke | null;
}

/** What the editor is given. */
export interface StrokeEditorProps {
  readonly place: TouchedPlace;
  readonly scale: Key;
  /** Why the stroke is what it is; empty when there is nothing to say. */
  readonly why: string;
  readonly changes: number;
  readonly undone: number;
  readonly onEdit: (edit: FigureEdit) => void;
  readonly onUndo: () => void;
  readonly onRedo: () => void;
  readonly onReset: () => void;
  readonly onClose: () => void;
}

/** Longest that a stroke can be made, in steps: two bars. */
const LONGEST = 16;

/** Changes one stroke by hand: out, in, by a half step or a step of the scale, longer or shorter; every change can be undone. */
export function StrokeEditor(props: StrokeEditorProps) {
  const { bar, side, step, sixEight, stroke } = props.place;
  const { changes, undone } = props;
  const panel = usePanel(props.onClose, { leavesFocus: true });
  return (
    <section ref={panel} className="stroke-editor" aria-label={PAD_WORDS.editor}>
      <p>
        <strong>{PAD_WORDS.place(bar, side, step, sixEight)}</strong>
        {stroke && ` · ${[...new Set(stroke.names.map(printedNote))].join(' ')}`}
        {changes > 0 && <span className="caption"> · {PAD_WORDS.changes(changes)}</span>}
        {props.why !== '' && (
          <span className="editor-why">
            <Worded text={props.why} />
          </span>
        )}
      </p>
      <div className="group-row">
        {stroke ? <StrokeChanges {...props} stroke={stroke} /> : <NewStroke {...props} />}
        <span className="editor-gap" />
        <ReasonedButton label={PAD_WORDS.undo} reason={changes === 0 ? PAD_WORDS.nothingMade : null} onPress={props.onUndo} />
        <ReasonedButton label={PAD_WORDS.redo} reason={undone === 0 ? PAD_WORDS.nothingUndone : null} onPress={props.onRedo} />
        {changes > 1 && <ReasonedButton label={PAD_WORDS.reset} onPress={props.onReset} />}
        <ReasonedButton label={PAD_WORDS.close} onPress={props.onClose} />
      </div>
    </section>
  );
}

function StrokeChanges({ place, stroke, scale, onEdit }: StrokeEditorProps & { readonly stroke: Stroke }) {
  const { bar, step } = place;
  const steps = Math.max(1, Math.round(stroke.durationTicks / TICKS_PER_STEP));
  const low = stroke.midi[0] ?? 60;
  const [down, up] = [scaleStep(low, scale, -1), scaleStep(low, scale, 1)];
  const by = (semitones: number) => () => onEdit({ bar, step, change: 'pitch', semitones });
  const long = (to: number) => () => onEdit({ bar, step, change: 'length', steps: to });
  return (
    <>
      <ReasonedButton label={PAD_WORDS.stepDown(down.name)} onPress={by(down.semitones)} />
      <ReasonedButton label={PAD_WORDS.stepUp(up.name)} onPress={by(up.semitones)} />
      <ReasonedButton label={PAD_WORDS.down} onPress={by(-1)} />
      <ReasonedButton label={PAD_WORDS.up} onPress={by(1)} />
      <ReasonedButton label={PAD_WORDS.shorter} reason={steps <= 1 ? PAD_WORDS.shortest : null} onPress={long(steps - 1)} />
      <ReasonedButton label={PAD_WORDS.longer} reason={steps >= LONGEST ? PAD_WORDS.longest : null} onPress={long(steps + 1)} />
      <ReasonedButton label={PAD_WORDS.leaveOut} onPress={() => onEdit({ bar, step, change: 'off' })} />
    </>
  );
}

function NewStroke({ place, onEdit }: StrokeEditorProps) {
  const { bar, step } = place;
  return (
    <>
      <ReasonedButton label={PAD_WORDS.on} onPress={() => onEdit({ bar, step, change: 'on', as: 'octave' })} />
      <ReasonedButton label={PAD_WORDS.onInner} onPress={() => onEdit({ bar, step, change: 'on', as: 'inner' })} />
    </>
  );
}
