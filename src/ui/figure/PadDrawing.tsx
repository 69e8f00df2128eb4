import { type KeyboardEvent, useRef, useState } from 'react';
import { claveMarks, type Pad, type PadRole, type PadSteps, roleOfKey, stepAfterKey, touched } from '../../layout/figure/rhythm-pad';
import type { Clave } from '../../vocabulary';
import { useTradedPlaces } from '../practise/use-traded-places';
import { PadBar } from './PadBar';
import { useTapLight } from './use-tap-light';

/** What the drawing of the pad is given. */
export interface PadDrawingProps {
  readonly pad: Pad;
  readonly clave: Clave;
  /** When the first tap was made, on the page's clock in milliseconds; null while nobody taps. */
  readonly tapsFrom: number | null;
  readonly stepMillis: number;
  readonly onDraw: (pad: Pad) => void;
}

/** Both bars of the pad: one tab stop, arrows from step to step, letters for roles. When the direction flips its bars change places. */
export function PadDrawing({ pad, clave, tapsFrom, stepMillis, onDraw }: PadDrawingProps) {
  const bars = useRef<HTMLDivElement>(null);
  const [tabStep, setTabStep] = useState(0);
  const steps = pad.length as PadSteps;
  useTradedPlaces(bars, clave.direction);
  useTapLight(bars, tapsFrom, stepMillis, steps);
  const marks = claveMarks(clave);
  const first = clave.direction === '2-3' ? (2 as const) : (3 as const);
  const put = (step: number, role: PadRole): void => onDraw(pad.with(step, role));
  const onKey = (event: KeyboardEvent, step: number): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const to = stepAfterKey(step, event.key, steps);
    const role = roleOfKey(event.key);
    if (to === null && role === null) return;
    if (role !== null) put(step, role);
    const next = to ?? (role === '.' && event.key === 'Backspace' ? step : Math.min(steps - 1, step + 1));
    setTabStep(next);
    bars.current?.querySelector<HTMLElement>(`[data-step="${next}"]`)?.focus();
    event.preventDefault();
    event.stopPropagation();
  };
  const bar = (side: 2 | 3) => (
    <PadBar
      key={side}
      pad={pad}
      direction={clave.direction}
      side={side}
      from={side === first ? 0 : steps / 2}
      clave={marks}
      tabStep={tabStep}
      onTouch={(step) => {
        setTabStep(step);
        onDraw(touched(pad, step));
      }}
      onKey={onKey}
    />
  );
  return (
    <div className="pad-bars" ref={bars}>
      {first === 2 ? [bar(2), bar(3)] : [bar(3), bar(2)]}
    </div>
  );
}
