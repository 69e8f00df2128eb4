import { claveMarks, type Pad } from '../../layout/figure/rhythm-pad';
import type { Clave } from '../../vocabulary';
import { PAD_WORDS } from '../../words/rhythm-pad';

/** One bar of the pad: eight steps on one side of the clave, the clave's strokes outlined. */
export function PadRow({
  pad,
  clave,
  from,
  onTouch,
}: {
  readonly pad: Pad;
  readonly clave: Clave;
  readonly from: 0 | 8;
  readonly onTouch: (step: number) => void;
}) {
  const marks = claveMarks(clave);
  const side = (from === 0) === (clave.direction === '2-3') ? 2 : 3;
  return (
    <fieldset className={side === 2 ? 'pad-row panel-two' : 'pad-row panel-three'}>
      <legend>{`${side}-side`}</legend>
      {pad.slice(from, from + 8).map((role, index) => {
        const step = from + index;
        return (
          <button key={step} type="button" className="pad-cell" data-clave={marks[step] || undefined} onClick={() => onTouch(step)}>
            <span className="visually-hidden">{PAD_WORDS.cell(clave.direction, step, role, marks[step] ?? false)}</span>
            <span aria-hidden="true">{PAD_WORDS.marks[role]}</span>
          </button>
        );
      })}
    </fieldset>
  );
}
