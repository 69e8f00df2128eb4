import type { ReactNode } from 'react';

/** Several of many: a named row of boxes to tick. What stands inside comes after them. */
export function Ticks<Value extends string | number>(props: {
  readonly name: string;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  readonly taken: readonly Value[];
  readonly onToggle: (value: Value) => void;
  readonly children?: ReactNode;
}) {
  return (
    <fieldset className="take-along-ticks">
      <legend>{props.name}</legend>
      {props.options.map(({ value, label }) => (
        <label key={value}>
          <input type="checkbox" checked={props.taken.includes(value)} onChange={() => props.onToggle(value)} />
          <span>{label}</span>
        </label>
      ))}
      {props.children}
    </fieldset>
  );
}
