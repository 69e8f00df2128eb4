import { type ReactNode, useEffect, useRef } from 'react';

/** Held down, a button repeats: first after a wait, then faster. */
const FIRST_REPEAT_MS = 420;
const REPEAT_MS = 90;

/** Two buttons around a value: one step down, one step up. Held down they go on stepping. */
export function Stepper(props: {
  readonly down: string;
  readonly up: string;
  readonly onStep: (by: 1 | -1) => void;
  readonly atLowest?: boolean;
  readonly atHighest?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <div className="stepper">
      <RepeatButton name={props.down} sign="−" disabled={props.atLowest ?? false} onPress={() => props.onStep(-1)} />
      <div className="stepper-value">{props.children}</div>
      <RepeatButton name={props.up} sign="+" disabled={props.atHighest ?? false} onPress={() => props.onStep(1)} />
    </div>
  );
}

function RepeatButton(props: { readonly name: string; readonly sign: string; readonly disabled: boolean; readonly onPress: () => void }) {
  const press = useRef(props.onPress);
  press.current = props.onPress;
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const repeated = useRef(false);
  const release = (): void => clearTimeout(timer.current);
  useEffect(() => () => clearTimeout(timer.current), []);
  const hold = (): void => {
    repeated.current = false;
    const again = (): void => {
      repeated.current = true;
      press.current();
      timer.current = setTimeout(again, REPEAT_MS);
    };
    timer.current = setTimeout(again, FIRST_REPEAT_MS);
  };
  return (
    <button
      type="button"
      className="key"
      aria-label={props.name}
      title={props.name}
      aria-disabled={props.disabled}
      onPointerDown={hold}
      onPointerUp={release}
      onPointerLeave={release}
      onPointerCancel={release}
      onClick={() => {
        if (!repeated.current && !props.disabled) props.onPress();
        repeated.current = false;
      }}
    >
      {props.sign}
    </button>
  );
}
