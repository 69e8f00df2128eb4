import { useId } from 'react';

/** One choice among a few, each in words. */
export function ChoiceRow<Value extends string>({
  name,
  values,
  labels,
  value,
  onChange,
}: {
  readonly name: string;
  readonly values: readonly Value[];
  readonly labels: Readonly<Record<Value, string>>;
  readonly value: Value;
  readonly onChange: (value: Value) => void;
}) {
  const group = useId();
  return (
    <fieldset className="sheet-choice">
      <legend>{name}</legend>
      {values.map((one) => (
        <label key={one}>
          <input type="radio" name={group} value={one} checked={one === value} onChange={() => onChange(one)} />
          {labels[one]}
        </label>
      ))}
    </fieldset>
  );
}
