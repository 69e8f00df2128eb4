import { emptyPad, padFrom } from '../../layout/figure/rhythm-pad';
import type { Desk } from '../../state/desk';
import { PARTS_WORDS } from '../../words/parts';
import { RhythmPad } from '../figure/RhythmPad';
import { StrokeEditor } from '../figure/StrokeEditor';
import { Boards } from './Boards';
import { Controls } from './Controls';
import { Judged } from './Judged';
import { Making } from './Making';
import { Swatches } from './Swatches';
import '../app/app.css';
import '../transport/transport.css';
import './parts.css';

const nothing = (): void => undefined;

/** Every part of the screens in every state, for looking at while developing: `#/parts`. */
export function PartsPage({ desk }: { readonly desk: Desk }) {
  const score = desk.desk.getState().music?.score ?? null;
  const [stroke = null] = score?.parts.rightHand ?? [];
  const editor = {
    scale: { tonic: 'D', mode: 'major' as const },
    why: PARTS_WORDS.why,
    changes: 1,
    undone: 0,
    onEdit: nothing,
    onUndo: nothing,
  };
  const rest = { onRedo: nothing, onReset: nothing, onClose: nothing };
  const pad = { stepMillis: 240, playing: () => emptyPad(16), onUse: nothing, onOff: nothing };
  return (
    <main className="parts">
      <h1>{PARTS_WORDS.title}</h1>
      <Swatches />
      <Controls />
      <h2>{PARTS_WORDS.editor}</h2>
      {[stroke, null].map((each) => (
        <StrokeEditor
          key={each ? 'stroke' : 'rest'}
          {...editor}
          {...rest}
          place={{ bar: 0, side: 2, step: 0, sixEight: false, stroke: each }}
        />
      ))}
      <h2>{PARTS_WORDS.pad}</h2>
      <RhythmPad {...pad} clave={{ kind: 'son', direction: '2-3' }} steps={16} own={null} />
      <RhythmPad {...pad} clave={{ kind: 'son', direction: '3-2' }} steps={16} own={{ text: 'x.xx.x.x .x.xx.x.', direction: '2-3' }} />
      <RhythmPad
        {...pad}
        playing={() => padFrom('x.xx.x', 12)}
        clave={{ kind: 'bembe', direction: '3-2' }}
        steps={12}
        own={{ text: 'o.ii.o .o.i.o', direction: '3-2' }}
      />
      <Judged />
      <Making />
      {score && <Boards score={score} />}
    </main>
  );
}
