import type { KeyboardEvent } from 'react';
import type { Pad, PadSteps } from '../../layout/figure/rhythm-pad';
import type { Direction, Side } from '../../vocabulary';
import { GRID_WORDS } from '../../words/grid';
import { PAD_WORDS } from '../../words/rhythm-pad';

/** What a bar of the pad is given. */
export interface PadBarProps {
  readonly pad: Pad;
  readonly direction: Direction;
  readonly side: Side;
  /** Its first step. */
  readonly from: number;
  /** True for the steps that the clave strikes. */
  readonly clave: readonly boolean[];
  /** The step that takes the Tab key. */
  readonly tabStep: number;
  readonly onTouch: (step: number) => void;
  readonly onKey: (event: KeyboardEvent, step: number) => void;
}

/** Where a rest lies in the bar, as it is counted. */
const countOf = (index: number, steps: PadSteps): string =>
  steps === 12 ? String(index + 1) : index % 2 === 0 ? String(index / 2 + 1) : GRID_WORDS.and;

/** One bar of the pad on its side of the clave; the clave's strokes stand over it as diamonds. */
export function PadBar({ pad, direction, side, from, clave, tabStep, onTouch, onKey }: PadBarProps) {
  const steps = pad.length as PadSteps;
  return (
    <fieldset className="pad-bar" data-side={side}>
      <legend>{PAD_WORDS.side(side)}</legend>
      {pad.slice(from, from + steps / 2).map((role, index) => {
        const step = from + index;
        return (
          <button
            key={step}
            type="button"
            className="pad-cell"
            data-step={step}
            data-role={role}
            tabIndex={step === tabStep ? 0 : -1}
            onClick={() => onTouch(step)}
            onKeyDown={(event) => onKey(event, step)}
          >
            <span className="visually-hidden">{PAD_WORDS.cell(direction, step, role, clave[step] ?? false, steps)}</span>
            <span className="pad-clave" aria-hidden="true">
              {clave[step] ? '◆' : ''}
            </span>
            <span className={role === '.' ? 'pad-mark pad-count' : 'pad-mark'} aria-hidden="true">
              {role === '.' ? countOf(index, steps) : PAD_WORDS.marks[role]}
            </span>
          </button>
        );
      })}
    </fieldset>
  );
}
